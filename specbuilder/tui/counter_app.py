"""The app: it paints the list of jobs at once, reads the catalogue beside that, and owns the disk's slow work."""

from __future__ import annotations

import asyncio
import gc
import os
import signal
import threading
from collections.abc import Callable, Sequence
from functools import partial
from typing import TYPE_CHECKING, ClassVar

from textual import work
from textual.app import App
from textual.message import Message
from textual.theme import Theme

from specbuilder.wording.guide import cannot_practise
from specbuilder.wording.jobs import leave_hint, window_too_small
from specbuilder.wording.last_line import own_mistake

from .counter import Counter
from .errands import Errand, Piece
from .ink import Look, turned
from .items import OnJob
from .keyboard import Keyboard
from .keys import TABLE, faults_of
from .marks import PLAIN, SHAPES
from .screen import TRACE, CounterScreen
from .screens.jobs import JobRow
from .start import Start

if TYPE_CHECKING:
    from .opening import Opening
    from .practice import Practice


class Brought(Message):
    """A search has something for the screens."""

    def __init__(self, piece: Piece) -> None:
        super().__init__()
        self.piece = piece


SYNC_S = 0.5
"""How often the journal is brought to the disk, when something was written."""


def die_of(number: signal.Signals) -> None:
    """Ends the process by this signal, so that whoever sent it sees that."""
    signal.signal(number, signal.SIG_DFL)
    os.kill(os.getpid(), number)


class CounterApp(App[None]):
    """One screen, one counter."""

    CSS_PATH: ClassVar = ["styles/counter.tcss"]
    ENABLE_COMMAND_PALETTE = False
    TITLE = "specbuilder"

    def __init__(self, start: Start, look: Look, ascii_marks: bool, keyboard: Keyboard | None = None) -> None:
        assert not faults_of(TABLE), "two acts on one key"
        super().__init__(ansi_color=look.own_colours)
        self.look = look
        self._dress()
        self._start = start
        self._syncs = self._lists = False
        self._practice: Practice | None = None
        self.ended_by: signal.Signals | None = None
        """What ended it from outside; None while nothing did."""
        marks = PLAIN if ascii_marks else SHAPES
        rows = tuple(JobRow(name=name) for name in start.names())
        self.counter = Counter(marks, rows, leave=self.exit, turn=self.turn, practise=self.practise, keyboard=keyboard)
        self.counter.jobs.at = OnJob(last) if (last := start.last_open()) else None
        self.counter.errands.runner = self.send
        self._screen = CounterScreen(self.counter, look, self._window_words)

    def get_default_screen(self) -> CounterScreen:
        """The one there is."""
        return self._screen

    def on_mount(self) -> None:
        """Read the catalogue once the first frame is out."""
        self._heed()
        self.call_after_refresh(self.read_catalogue)

    @work(thread=True, exit_on_error=True)
    def read_catalogue(self) -> None:
        """Off the first frame: the rules, and all that must be imported to reason about them."""
        self.call_from_thread(self._loaded, self._read(partial(self._start.load, self.counter)))

    @staticmethod
    def _read(load: Callable[[], Opening | Sequence[str]]) -> Opening | Sequence[str]:
        """What was read; a mistake of the program becomes a sentence and ends nothing."""
        try:
            return load()
        except Exception as mistake:
            if os.environ.get(TRACE):
                raise
            return (own_mistake(f"{type(mistake).__name__}: {mistake}"),)

    def _loaded(self, found: Opening | Sequence[str]) -> None:
        if isinstance(found, Sequence):
            self.counter.failed(found)
        else:
            self.counter.loaded(found)
        self._screen.paint()
        self.set_interval(SYNC_S, self._sync)
        gc.enable()
        gc.collect()
        gc.freeze()
        gc.set_threshold(20_000, 20, 50)

    def _sync(self) -> None:
        """Where the cursor is, into the journal; what is new in the journal, to the disk."""
        opening = self.counter.opening
        if opening is None:
            return
        opening.remember()
        opening.desk.try_again()
        if not opening.all_listed and not self._lists:
            self._lists = True
            self.list_jobs(opening)
        if opening.tell_trouble():
            self._screen.paint()
        if opening.desk.unsynced and not self._syncs:
            self._syncs = True
            self.bring_to_disk()

    @work(thread=True, group="disk")
    def bring_to_disk(self) -> None:
        """The journal, down to the platter; nobody waits for it."""
        if self.counter.opening is not None:
            self.counter.opening.desk.sync()
        self._syncs = False

    @work(thread=True, group="disk")
    def list_jobs(self, opening: Opening) -> None:
        """What each of many jobs is about; nobody waits for it."""
        opening.read_ahead()
        self.call_from_thread(self._list, opening)

    def _list(self, opening: Opening) -> None:
        self._lists = False
        if opening is self.counter.opening and opening.walk is None:
            self.counter.jobs.rows = opening.rows()
            self._screen.paint()

    def send(self, errand: Errand[object]) -> None:
        """Give an errand a thread of its own; what it brings comes as a message, in its turn among the keys."""
        self.run_worker(partial(errand.run, self._hand), thread=True, group="search")

    def _hand(self, piece: Piece) -> None:
        self.post_message(Brought(piece))

    def on_brought(self, event: Brought) -> None:
        """Show it."""
        event.stop()
        self._screen.take_in(event.piece)

    def turn(self) -> None:
        """Light ground or dark ground."""
        self.look = turned(self.look)
        self._dress()
        self._screen.wear(self.look)

    def practise(self) -> None:
        """Into the guided job, or out of it again."""
        if self._practice is not None:
            self._practice.end()
            self._practice = None
            return
        from .practice import Practice

        try:
            self._practice = Practice(self.counter)
        except OSError as error:
            self.counter.say(cannot_practise(str(error)))
            return
        self.read_practice(self._practice)

    @work(thread=True)
    def read_practice(self, practice: Practice) -> None:
        """Beside the screens: what is practised on."""
        self.call_from_thread(self._practise_on, practice, self._read(practice.load))

    def _practise_on(self, practice: Practice, found: Opening | Sequence[str]) -> None:
        if practice is self._practice and not practice.arrived(found):
            self._practice = None
        self._screen.paint()

    def action_help_quit(self) -> None:
        """Ctrl+C is for copying elsewhere: say how the program is left."""
        self.counter.say(leave_hint())
        self._screen.paint()

    def on_unmount(self) -> None:
        """Leave the open job as a job is left: nothing is asked, and nothing is waited for."""
        self.counter.errands.only_for(None)
        if self.counter.opening is not None:
            self.counter.opening.leave()
        if self._practice is not None:
            self._practice.end()
            self._practice = None

    def _heed(self) -> None:
        """Who ends the program from outside, or closes its window, ends it as it is left by its own key."""
        if os.name != "posix" or threading.current_thread() is not threading.main_thread():
            return
        loop = asyncio.get_running_loop()
        loop.add_signal_handler(signal.SIGTERM, self._ended)
        loop.add_signal_handler(signal.SIGHUP, self._hung_up)

    def _ended(self) -> None:
        self.ended_by = signal.SIGTERM
        self.exit()

    def _hung_up(self) -> None:
        """No terminal is left that anything could be painted on."""
        self.on_unmount()
        die_of(signal.SIGHUP)

    def _dress(self) -> None:
        """Tell the toolkit the colours of the ground; everything else is painted by the boards."""
        look = self.look
        if look.ground is None or look.text is None:
            self.theme = "ansi-dark"
            return
        ink, ground = look.text, look.ground
        theme = Theme(name=look.name, primary=ink, foreground=ink, background=ground, surface=ground, dark=look.dark)
        self.register_theme(theme)
        self.theme = look.name

    def _window_words(self, columns: int, rows: int) -> Sequence[str]:
        opening = self.counter.opening
        job = opening.desk.job if opening is not None else None
        return (window_too_small(columns, rows, job.number if job is not None else ""),)
