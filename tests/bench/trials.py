"""The yardstick for trials: the same bearing, the same chance, the same figures, as a NumPy program that works in blocks that stay in the cache.

trials.py BALLS TRIALS prints the seconds of one run. All lengths in millimetres.
"""
import sys
import time

import numpy as np

BALL, LOT, GROOVE, PLAY = 0.1, 0.05, 0.1, 0.1
DIAMETER = 16.0
BLOCK = 2048


def one_block(random, balls, trials, bottom):
    diameters = random.normal(DIAMETER, BALL, (trials, balls)) + random.normal(0, LOT, (trials, 1))
    outer = bottom + random.normal(0, GROOVE, (trials, 1))
    inner = bottom - 2 * DIAMETER - 0.16 + random.normal(0, PLAY, trials)
    radii = diameters / 2
    centres = outer - radii
    left, right = slice(None, -1), slice(1, None)
    cosines = 1 - 2 * radii[:, left] * radii[:, right] / (centres[:, left] * centres[:, right])
    angle = 2 * np.pi - np.arccos(cosines).sum(axis=1)
    first, last = centres[:, 0], centres[:, -1]
    chord = np.sqrt(first**2 + last**2 - 2 * first * last * np.cos(angle))
    gap = np.where(angle > 0, chord, -chord) - radii[:, 0] - radii[:, -1]
    play = 2 * (outer[:, 0] - inner - diameters.mean(axis=1) * 2)
    return gap, play


def figures(values):
    ordered = np.sort(values)
    count = len(ordered)
    inside = int(0.95 * count)
    widths = ordered[inside:] - ordered[: count - inside]
    shortest = int(np.argmin(widths))
    shares = [(values < 0).mean(), ((values >= 0) & (values <= 2)).mean(), (values > 2).mean()]
    return values.mean(), values.std(), np.percentile(ordered, [0.1, 2.5, 5, 25, 50, 75, 95, 97.5, 99.9]), ordered[shortest], shares


def main(balls, trials):
    random = np.random.default_rng(1)
    bottom = DIAMETER / (2 * np.sin(np.pi / balls)) * 1.004 + DIAMETER / 2
    before = time.perf_counter()
    blocks = [one_block(random, balls, min(BLOCK, trials - done), bottom) for done in range(0, trials, BLOCK)]
    for output in (0, 1):
        figures(np.concatenate([block[output] for block in blocks]))
    print(time.perf_counter() - before)


main(int(sys.argv[1]), int(sys.argv[2]))
