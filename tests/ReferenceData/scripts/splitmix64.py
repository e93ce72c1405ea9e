"""First outputs of SplitMix64 for some seeds, written from the published algorithm with Python's whole numbers.

Run from tests/ReferenceData:  python3 scripts/splitmix64.py
"""
import sys

MASK = (1 << 64) - 1
with open("computed/splitmix64.csv", "w") as out:
    out.write(f"# Python {sys.version.split()[0]}; scripts/splitmix64.py\n")
    out.write("seed,index,output\n")
    for seed in (0, 1, 1234567, MASK):
        state = seed
        for index in range(5):
            state = (state + 0x9E3779B97F4A7C15) & MASK
            z = state
            z = ((z ^ (z >> 30)) * 0xBF58476D1CE4E5B9) & MASK
            z = ((z ^ (z >> 27)) * 0x94D049BB133111EB) & MASK
            out.write(f"{seed},{index},{z ^ (z >> 31)}\n")
