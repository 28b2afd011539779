"""Memory that the reader's process freed goes back to the system."""

import platform
import subprocess
import sys
from pathlib import Path

import pytest

_FREED = """
import sys
sys.path[:0] = {path!r}
from desktop.memory import give_back_memory, keep_large_blocks_apart

def held():
    status = open("/proc/self/status").read()
    return int(status.partition("VmRSS:")[2].split()[0])

{first}
blocks = [bytearray(100_000) for _ in range(1000)]
rest = [bytearray(64) for _ in range(1000)]
full = held()
del blocks[1::2], blocks
print(full - held(), end=" ")
give_back_memory()
print(full - held())
"""


@pytest.mark.skipif(platform.libc_ver()[0] != "glibc", reason="only the GNU C library keeps what was freed")
def test_what_was_freed_goes_back_when_it_is_asked_for():
    code = _FREED.format(path=[str(Path(__file__).parents[2])], first="keep_large_blocks_apart()")
    ran = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    before, after = map(int, ran.stdout.split())
    assert after > 80_000  # KiB of some 98,000
    assert before <= after
