"""Adding to the shop log when something is in the way: a crash, a full disk, another writer."""

import errno
import multiprocessing
import os
import threading
from dataclasses import replace
from datetime import timedelta

import pytest
from log_rows import CHECK, START, WATER, WHOLE, same

from shop_calc.trade.logbook import log_write
from shop_calc.trade.logbook.shop_log import Event, append_events, read_log


@pytest.fixture
def file(tmp_path):
    return tmp_path / "log.csv"


@pytest.mark.parametrize("cut", range(1, 80, 3))
def test_a_row_torn_by_a_crash_spoils_no_other(file, cut):
    append_events(file, (WATER, replace(CHECK, note='a "quoted", note')))
    whole = file.read_bytes()
    file.write_bytes(whole[:-cut])
    append_events(file, replace(CHECK, time=START + timedelta(hours=3), note="after"))
    assert file.read_bytes().startswith(whole[:-cut])  # nothing before is rewritten
    log = read_log(file)
    assert same(log.events)[0] == WATER and log.events[-1].note == "after"
    if len(log.events) == 2:
        assert [problem.line for problem in log.problems] == [3] and "torn" in log.problems[0].reason
    else:  # cut off in its last cell or at its line end: the numbers are whole
        assert log.events[1].resistance_pa == CHECK.resistance_pa


class FailingWrite:
    """A disk that takes some bytes and then is full."""

    def __init__(self, taken):
        self.taken = taken

    def __call__(self, handle, block):
        if not self.taken:
            raise OSError(errno.ENOSPC, "No space left on device")
        return os_write(handle, block[: self.taken])


os_write = os.write


@pytest.mark.parametrize("taken", [0, 1, 40])
def test_a_full_disk_adds_nothing_and_loses_nothing(file, monkeypatch, taken):
    append_events(file, WATER)
    before = file.read_bytes()
    monkeypatch.setattr(log_write.os, "write", FailingWrite(taken))
    with pytest.raises(OSError, match=r"nothing was added.*earlier row is as it was") as error:
        append_events(file, CHECK)
    assert error.value.errno == errno.ENOSPC
    monkeypatch.undo()
    assert file.read_bytes() == before
    append_events(file, CHECK)
    assert same(read_log(file).events) == [WATER, CHECK]


@pytest.mark.skipif(not os.path.exists("/dev/full"), reason="no /dev/full here")
def test_the_full_device_is_said():
    with pytest.raises(OSError, match="nothing was added"):
        append_events("/dev/full", WATER)


def test_a_folder_or_a_missing_folder_is_said(tmp_path):
    for place in (tmp_path, tmp_path / "none" / "log.csv"):
        with pytest.raises(OSError, match="nothing was added"):
            append_events(place, WATER)


def add_many(path, name, count):
    for number in range(count):
        note = f"{name} {number} " + "x" * 300
        append_events(path, Event(name, START + timedelta(minutes=number), "water_in", note=note))


def test_two_writers_at_once_lose_no_row_and_mix_none(file):
    context = multiprocessing.get_context("spawn")
    writers = [context.Process(target=add_many, args=(file, name, 60)) for name in ("one", "two")]
    for writer in writers:
        writer.start()
    for writer in writers:
        writer.join(60)
    log = read_log(file)
    assert log.problems == () and file.read_text().count(WHOLE) == 1
    for name in ("one", "two"):
        notes = [event.note.split()[1] for event in log.events if event.pour_id == name]
        assert notes == [str(number) for number in range(60)]


def test_threads_of_one_program_do_not_mix_either(file):
    threads = [threading.Thread(target=add_many, args=(file, f"thread {number}", 20)) for number in range(4)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join(60)
    assert len(read_log(file).events) == 80


def test_a_file_that_somebody_holds_is_waited_for_and_then_said(file, monkeypatch):
    fcntl = pytest.importorskip("fcntl")
    append_events(file, WATER)
    monkeypatch.setattr(log_write, "TRIES", 3)
    with open(file, "rb") as held:
        fcntl.flock(held, fcntl.LOCK_EX)
        with pytest.raises(OSError, match="another program holds it"):
            append_events(file, CHECK)
    append_events(file, CHECK)
    assert len(read_log(file).events) == 2


class ByteLocks:
    """Locks of single bytes as Windows gives them: from the place of the handle, refused with EACCES while held."""

    LK_NBLCK, LK_UNLCK = 2, 0

    def __init__(self):
        self.held, self.places = set(), []

    def locking(self, handle, how, count):
        byte = os.fstat(handle).st_ino, os.lseek(handle, 0, os.SEEK_CUR)
        assert count == 1
        if how == self.LK_UNLCK:
            self.held.remove(byte)
        elif byte in self.held:
            raise PermissionError(errno.EACCES, "Permission denied")
        else:
            self.held.add(byte)
            self.places.append(byte[1])


def test_where_locks_are_bytes_the_same_byte_far_behind_the_end_is_held_and_given_back(file, monkeypatch):
    locks = ByteLocks()
    monkeypatch.setattr(log_write, "fcntl", None)
    monkeypatch.setattr(log_write, "msvcrt", locks, raising=False)
    monkeypatch.setattr(log_write, "TRIES", 2)
    append_events(file, WATER)
    append_events(file, CHECK)
    assert same(read_log(file).events) == [WATER, CHECK] and not locks.held
    assert len(set(locks.places)) == 1 and locks.places[0] > 50_000_000  # beyond the largest log that is read
    locks.held.add((file.stat().st_ino, locks.places[0]))
    with pytest.raises(OSError, match="another program holds it"):
        append_events(file, CHECK)
    assert len(read_log(file).events) == 2


def test_without_locks_one_write_still_does(file, monkeypatch):
    def no_locks(handle):
        raise OSError(errno.ENOLCK, "No locks available")

    monkeypatch.setattr(log_write, "_lock", no_locks)
    append_events(file, WATER)
    append_events(file, CHECK)
    assert same(read_log(file).events) == [WATER, CHECK]


def test_adding_costs_no_more_in_a_long_log(file):
    append_events(file, WATER)
    row = file.read_bytes().splitlines(keepends=True)[1]
    with open(file, "ab") as long:
        long.write(row * 100_000)
    size = file.stat().st_size
    append_events(file, CHECK)
    assert size < file.stat().st_size < size + 300
    with open(file, "rb") as long:
        long.seek(size)
        assert long.read().startswith(b"bench,2026-05-04T10:30:00,check")
