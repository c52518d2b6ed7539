"""The closed sets of the domain. Text form (``.value``) is what stands in files; screens use ``wording``."""

from enum import IntEnum, StrEnum


class Step(StrEnum):
    """One stop of the walk, in the order it is walked."""

    BRIEF = "brief"
    BASE_VAN = "base-van"
    ROOF = "roof"
    SEATING = "seating"
    KITCHEN = "kitchen"
    HEATING = "heating"
    POWER = "power"
    FINISH = "finish"
    CHECK = "check"


STEPS: tuple[Step, ...] = tuple(Step)
"""All nine, first to last."""


class Level(StrEnum):
    """How much a broken rule stops."""

    STOP = "STOP"
    """Cannot be signed or built."""
    SIGN = "SIGN"
    """May be accepted in writing."""
    NOTE = "NOTE"
    """Said and printed."""


class Verdict(StrEnum):
    """The three answers of a rule, ledger or figure."""

    HOLDS = "holds"
    BROKEN = "broken"
    CANNOT_TELL = "cannot tell"


class OptionState(StrEnum):
    """What may still happen to an option in this spec."""

    CHOSEN = "chosen"
    FOLLOWS = "follows"
    OPEN = "open"
    BLOCKED = "blocked"


class Pick(StrEnum):
    """How many answers a group takes."""

    ONE = "one"
    ANY = "any"


class Place(StrEnum):
    """Where a choice sits, seen facing forward. Fixed to the vehicle, never to the kerb."""

    LEFT = "left"
    RIGHT = "right"
    REAR = "rear"


class RuleKind(StrEnum):
    """What a rule demands of its two halves."""

    NEEDS_ANY = "needs-any"
    EXCLUDES = "excludes"
    EXACTLY_ONE = "exactly-one"
    LIMIT = "limit"
    ADVICE = "advice"


class Sense(StrEnum):
    """On which side of its bound a value must stay."""

    AT_MOST = "at most"
    AT_LEAST = "at least"
    SHOWN = "shown"


class Confidence(StrEnum):
    """How well a rule's figure is founded."""

    VERIFIED = "verified"
    KNOWN = "known"
    ESTIMATE = "estimate"


class Basis(StrEnum):
    """Where an option's mass, price and weeks come from."""

    SCENARIO = "scenario"
    ESTIMATE = "estimate"
    MEASURED = "measured"


class Anchor(StrEnum):
    """From where ``x_mm`` is measured."""

    DATUM = "datum"
    """Rear face of the left door pillar."""
    REAR = "rear"
    """The van's rear sill; x is usually negative."""
    AXLE_REAR = "axle-rear"
    """The rear axle."""


class RoofPart(StrEnum):
    """Which part of the roof carries a thing."""

    FIXED = "fixed"
    MOVING = "moving"
    TOP = "top"
    """On the shell when the roof lifts, else on the steel."""


class LedgerKind(StrEnum):
    LEDGER = "ledger"
    """A sum over the choices."""
    FIGURE = "figure"
    """A computed number that is no such sum."""


class AnswerType(StrEnum):
    """What kind of answer a key of the brief takes."""

    WHOLE = "whole"
    DECIMAL = "decimal"
    ONE_OF = "one of"
    LIST = "list"
    AGES = "ages"


class Owner(StrEnum):
    """Whose part a choice is."""

    HOUSE = "ours"
    CUSTOMER = "theirs"


class JobState(StrEnum):
    DRAFT = "draft"
    QUOTED = "quoted"
    ORDERED = "ordered"
    CHANGED = "changed"
    AS_BUILT = "as built"
    EXPIRED = "expired"


class CollectionSubject(StrEnum):
    """What a sentence of the day of collection is about, in the order of telling."""

    ALARM = "alarm, fire or smell"
    SLEEPING_BATTERY = "sleeping battery"
    FROST = "frost"
    LIFTING_ROOF = "lifting roof"
    INSURER = "insurer and licensing body"
    WARRANTY = "warranty"


class Weekday(StrEnum):
    """Days of the week, in their order."""

    MON = "mon"
    TUE = "tue"
    WED = "wed"
    THU = "thu"
    FRI = "fri"
    SAT = "sat"
    SUN = "sun"


class Compare(StrEnum):
    EQUAL = "="
    UNEQUAL = "!="
    ABOVE = ">"
    BELOW = "<"


class Truth(IntEnum):
    """Kleene's three truth values, in their order: *and* is the least, *or* the greatest."""

    NO = 0
    MAYBE = 1
    YES = 2


class Rank(IntEnum):
    """Order of findings on every list: what stops comes first."""

    STOP_BROKEN = 0
    STOP_UNKNOWN = 1
    SIGN_BROKEN = 2
    SIGN_UNKNOWN = 3
    NOTE_BROKEN = 4
    NOTE_UNKNOWN = 5
    HOLDS = 6
