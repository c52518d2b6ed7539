"""``python -m specbuilder``: the same as ``specbuilder``."""

import sys

from specbuilder.cli.main import main

sys.exit(main())
