"""The journal on disk: append only, and kept in memory as well, so that a full or lost disk costs nothing."""

from __future__ import annotations

import os
from pathlib import Path
from threading import Lock

from .atomic import BINARY, sync_folder, write_whole
from .disk import DiskError, disk, refuse_special


class JournalFile:
    """An open journal. What could not be written waits and is tried again before anything later is written."""

    def __init__(self, path: Path, content: bytes) -> None:
        """Opens the journal for appending and cuts off whatever stands after ``content``.

        Raises:
            DiskError: it could not be opened.
        """
        self._path = path
        self._content = bytearray(content)
        self._guard = Lock()
        self._unsure = False
        refuse_special(path, writing=True)
        with disk(path, writing=True):
            self._file = _open(path)
            # Whoever moved or cut it since it was read must not make us append to a hole.
            stands = os.fstat(self._file).st_size >= len(content)
            self._on_disk = len(content) if stands else 0
            os.ftruncate(self._file, self._on_disk)
            self._write()

    @classmethod
    def new(cls, path: Path, content: bytes) -> JournalFile:
        """Makes a journal that holds this; it stands on the disk when this returns.

        Raises:
            DiskError: it could not be made; what stood there still does, unless the error is ``unsure``.
        """
        write_whole(path, content)
        try:
            return cls(path, content)
        except DiskError as error:
            raise error.about(path) from error

    @property
    def waiting(self) -> int:
        """Bytes that could not be written yet, or that the disk may have lost again."""
        return len(self._content) - (0 if self._unsure else self._on_disk)

    def append(self, line: bytes) -> None:
        """Adds a line; the system holds it when this returns, ``sync`` brings it to the disk.

        Raises:
            DiskError: it is kept, and written by the next ``append`` or ``retry`` that can.
        """
        with self._guard:
            self._content += line
            self._write()

    def retry(self) -> None:
        """Writes what waits.

        Raises:
            DiskError: it still waits.
        """
        with self._guard:
            self._write()

    @property
    def length(self) -> int:
        """Bytes it holds, those that wait included."""
        return len(self._content)

    def cut_back(self, length: int) -> None:
        """Takes back everything after so many bytes, as if it had never been appended. Needs no room.

        Raises:
            DiskError: what was written still stands there, or may come back.
        """
        with self._guard, disk(self._path, writing=True):
            os.ftruncate(self._file, min(length, self._on_disk))
            self._on_disk = min(length, self._on_disk)
            del self._content[length:]
            try:
                os.fsync(self._file)
            except OSError:
                self._unsure = True
                raise

    def sync(self) -> None:
        """Brings everything appended so far to the disk. May take long: meant for a worker; appending goes on.

        Raises:
            DiskError: the disk did not take it. Nobody can tell what of it is there: all of it is written once more by
                the next ``append`` or ``retry``.
        """
        with disk(self._path, writing=True):
            with self._guard:
                file = os.dup(self._file)
            try:
                os.fsync(file)
            except OSError:
                self._unsure = True
                raise
            finally:
                os.close(file)

    def close(self) -> None:
        """Lets go of the file."""
        os.close(self._file)

    def _write(self) -> None:
        if self._unsure:
            self._write_anew()
        with disk(self._path, writing=True):
            if not self._stands():
                self._make_again()
            while self._on_disk < len(self._content):
                self._on_disk += os.write(self._file, self._content[self._on_disk :])

    def _write_anew(self) -> None:
        """A system that could not bring a file to the disk may have dropped what it held: another file is made."""
        try:
            write_whole(self._path, bytes(self._content))
        except DiskError as error:
            raise error.about(None) from error  # it waits, and is written until it stands
        with disk(self._path, writing=True):
            file = _open(self._path)
        os.close(self._file)
        self._file, self._on_disk, self._unsure = file, len(self._content), False

    def _stands(self) -> bool:
        """Whether the file we hold is the one of that name, and not one that was removed or renamed under us."""
        try:
            return os.path.samestat(os.stat(self._path), os.fstat(self._file))
        except FileNotFoundError:
            return False

    def _make_again(self) -> None:
        """Somebody removed the file under us: everything is written once more under its old name."""
        file = os.open(self._path, os.O_WRONLY | os.O_CREAT | os.O_APPEND | os.O_EXCL | BINARY, 0o666)
        os.close(self._file)
        self._file = file
        self._on_disk = 0
        sync_folder(self._path.parent)


def _open(path: Path) -> int:
    return os.open(path, os.O_RDWR | os.O_CREAT | os.O_APPEND | BINARY, 0o666)
