"""Files of users: written whole, through links, with their permissions, never over what is read-only or has changed; read with an end."""

import multiprocessing
import os
import signal
import stat
import subprocess
import sys
import time

import pytest

from brimwork import files

unix = pytest.mark.skipif(os.name == "nt", reason="permissions and signals as on Unix")


@unix
def test_a_new_file_gets_the_permissions_that_new_files_get_and_an_old_one_keeps_its_own(tmp_path):
    new, old = tmp_path / "new", tmp_path / "old"
    old.write_bytes(b"1")
    os.chmod(old, 0o664)
    before = os.umask(0o027)
    try:
        for path in (new, old):
            files.write_whole(path, b"2")
        files.begin(tmp_path / "begun", b"3")
    finally:
        os.umask(before)
    assert [stat.S_IMODE((tmp_path / name).stat().st_mode) for name in ("new", "old", "begun")] == [0o640, 0o664, 0o640]


@unix
def test_a_link_is_written_through_and_stays_a_link(tmp_path):
    (tmp_path / "shelf").mkdir()
    real, link = tmp_path / "shelf" / "real", tmp_path / "link"
    real.write_bytes(b"1")
    link.symlink_to(real)
    files.write_whole(link, b"2")
    assert link.is_symlink() and real.read_bytes() == b"2"
    (tmp_path / "dangling").symlink_to(tmp_path / "shelf" / "later")
    files.write_whole(tmp_path / "dangling", b"3")
    assert (tmp_path / "shelf" / "later").read_bytes() == b"3" and (tmp_path / "dangling").is_symlink()


@unix
def test_what_is_read_only_or_no_file_is_refused_and_stays(tmp_path):
    kept, pipe = tmp_path / "kept", tmp_path / "pipe"
    kept.write_bytes(b"1")
    os.chmod(kept, 0o444)
    os.mkfifo(pipe)
    for path in (kept, pipe, tmp_path, tmp_path / "null\0", tmp_path / ("n" * 300)):
        with pytest.raises(OSError):
            files.write_whole(path, b"2")
    assert kept.read_bytes() == b"1" and sorted(os.listdir(tmp_path)) == ["kept", "pipe"]


@unix
def test_a_pipe_or_a_device_is_no_file_to_read_and_a_large_file_has_an_end(tmp_path):
    os.mkfifo(tmp_path / "pipe")
    (tmp_path / "link").symlink_to("/dev/zero")
    for path in (tmp_path / "pipe", tmp_path / "link", tmp_path, "/dev/null", tmp_path / "null\0", tmp_path / "absent", tmp_path / ("n" * 300)):
        begun = time.monotonic()
        with pytest.raises(OSError):
            files.read_bounded(path, 100)
        assert time.monotonic() - begun < 1
    (tmp_path / "large").write_bytes(b"x" * 1000)
    assert len(files.read_bounded(tmp_path / "large", 100)) == 101


def test_a_file_that_was_changed_meanwhile_is_not_replaced_whatever_the_clock_says(tmp_path):
    path = tmp_path / "file"
    files.write_instead(path, None, b"1")
    files.write_instead(path, b"1", b"2")
    now = path.stat()
    for was in (None, b"1", b"3"):
        path.write_bytes(b"4")
        os.utime(path, ns=(now.st_atime_ns, now.st_mtime_ns))
        with pytest.raises(files.Meanwhile):
            files.write_instead(path, was, b"5")
    assert path.read_bytes() == b"4"


def _count_up(path, times: int) -> None:
    for _ in range(times):
        while True:
            was = path.read_bytes()
            try:
                files.write_instead(path, was, str(int(was) + 1).encode())
                break
            except files.Meanwhile:
                continue


@unix
def test_of_two_writers_neither_undoes_the_other(tmp_path):
    path = tmp_path / "count"
    path.write_bytes(b"0")
    writers = [multiprocessing.get_context("fork").Process(target=_count_up, args=(path, 100)) for _ in range(2)]
    for writer in writers:
        writer.start()
    for writer in writers:
        writer.join(60)
    assert path.read_bytes() == b"200"


@unix
def test_what_a_killed_writer_left_is_cleared_away_and_what_a_living_one_writes_is_not(tmp_path, monkeypatch):
    path = tmp_path / "file"
    code = "import os, sys, time\nfrom pathlib import Path\nfrom brimwork import files\nfiles.os.fsync = lambda _: (print('at', flush=True), time.sleep(60))\nfiles.write_whole(Path(sys.argv[1]), b'2')"
    writer = subprocess.Popen([sys.executable, "-c", code, str(path)], stdout=subprocess.PIPE)
    writer.stdout.readline()
    monkeypatch.setattr(files, "STALE", -1.0)
    files.write_whole(path, b"1")
    assert len(os.listdir(tmp_path)) == 2, "the other one is still at it"
    writer.send_signal(signal.SIGKILL)
    writer.wait()
    writer.stdout.close()
    files.write_whole(path, b"1")
    assert os.listdir(tmp_path) == ["file"]


def test_a_name_as_long_as_a_disk_takes_can_be_written(tmp_path):
    path = tmp_path / ("ü" * 125)
    files.write_whole(path, b"1")
    assert path.read_bytes() == b"1" and os.listdir(tmp_path) == [path.name]
