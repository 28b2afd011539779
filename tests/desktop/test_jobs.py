"""Jobs: who runs where, and that exactly one ending comes."""

import sys
import threading

import pytest
from PySide6.QtCore import QObject, Signal

from desktop.jobs import Job, Jobs
from recognition.errors import InputError


@pytest.fixture
def jobs(qtbot):
    owner = Jobs()
    yield owner
    assert owner.close()


def endings(job: Job) -> list[str]:
    heard: list[str] = []
    job.succeeded.connect(lambda value: heard.append(f"succeeded {value}"))
    job.failed.connect(lambda sentence: heard.append(f"failed {sentence}"))
    job.cancelled.connect(lambda: heard.append("cancelled"))
    return heard


def test_work_runs_elsewhere_and_news_arrives_in_the_windows_thread(qtbot, jobs):
    threads = {}

    def work(tick, give):
        threads["work"] = threading.get_ident()
        tick(1, 2)
        give("part")
        return 7

    job = Job("Reading", work)
    job.progressed.connect(lambda done, total: threads.setdefault("progress", threading.get_ident()))
    job.gave.connect(lambda part: threads.setdefault(part, threading.get_ident()))
    heard = endings(job)
    with qtbot.waitSignal(job.ended, timeout=5000):
        jobs.start(job)
    here = threading.get_ident()
    assert threads["work"] != here
    assert (threads["progress"], threads["part"]) == (here, here)
    assert heard == ["succeeded 7"]


def test_users_error_arrives_as_its_sentence(qtbot, jobs):
    def work(tick, give):
        raise InputError("The sheet is blank. Turn it over.")

    job = Job("Reading", work)
    heard = endings(job)
    with qtbot.waitSignal(job.ended, timeout=5000):
        jobs.start(job)
    assert heard == ["failed The sheet is blank. Turn it over."]


@pytest.mark.logs("ERROR")
def test_fault_of_ours_arrives_as_a_sentence_and_goes_to_the_log(qtbot, jobs, caplog):
    def work(tick, give):
        return 1 / 0

    job = Job("Reading", work)
    heard = endings(job)
    with qtbot.waitSignal(job.ended, timeout=5000):
        jobs.start(job)
    assert heard == ["failed Reading failed; nothing is lost. Try again, or see the log."]
    assert "ZeroDivisionError" in caplog.text


def test_cancelled_job_ends_at_its_next_tick(qtbot, jobs):
    going = threading.Event()

    def work(tick, give):
        going.set()
        while True:
            tick(0, 1)

    job = Job("Reading", work)
    heard = endings(job)
    with qtbot.waitSignal(job.ended, timeout=5000):
        jobs.start(job)
        assert going.wait(5)
        job.cancel()
    assert heard == ["cancelled"]
    assert not jobs.busy


def test_closing_stops_what_runs_and_what_waits(qtbot):
    jobs = Jobs()
    going = threading.Event()

    def work(tick, give):
        going.set()
        while True:
            tick(0, 1)

    for name in ("first", "second"):
        jobs.start(Job(name, work))
    assert going.wait(5)
    assert jobs.close()
    assert not jobs.busy


def test_signal_emissions_keep_the_count_of_true(qtbot):
    """PySide6 6.12.0 on Python 3.11 loses a reference to True with each emission; the pin must keep it out."""

    class Bell(QObject):
        rang = Signal(bool)

    bell = Bell()
    heard = []
    bell.rang.connect(heard.append)
    before = sys.getrefcount(True)
    for _ in range(100):
        bell.rang.emit(True)
    heard.clear()
    assert sys.getrefcount(True) >= before
