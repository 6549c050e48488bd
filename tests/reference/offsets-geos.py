"""Offsets by GEOS, through shapely, as reference values for lib/core/geometry.

Run: /usr/bin/python3 tests/reference/offsets-geos.py > tests/reference/offsets-geos.json
Every outline is invented. Round joins with 256 segments a quarter circle, so chords cut off less than 2e-5 of the offset.
"""

import json
import math
import platform
import random

import shapely
import shapely.geos
from shapely.geometry import Polygon

QUARTER_SEGMENTS = 256


def regular(corners, radius):
    return [(radius * math.cos(2 * math.pi * k / corners), radius * math.sin(2 * math.pi * k / corners)) for k in range(corners)]


def noisy(points, noise, seed):
    source = random.Random(seed)
    outline = []
    for k in range(points):
        angle = 2 * math.pi * k / points
        radius = 150 + 30 * math.sin(3 * angle) + source.uniform(-noise, noise)
        outline.append((radius * math.cos(angle), radius * math.sin(angle)))
    return outline


DUMBBELL = [(0, 0), (100, 0), (100, 44), (160, 44), (160, 0), (260, 0), (260, 100), (160, 100), (160, 56), (100, 56), (100, 100), (0, 100)]
ANGLE = [(0, 0), (120, 0), (120, 35), (45, 35), (45, 140), (0, 140)]
COMB = [(0, 0), (180, 0), (180, 90), (150, 90), (150, 30), (120, 30), (120, 90), (90, 90), (90, 30), (60, 30), (60, 90), (0, 90)]
WEDGE = [(0, -13.1233), (150, 0), (0, 13.1233)]

SHAPES = [
    ("convex: hexagon", regular(6, 60), [], [5, 12.7, 40, -5, -20]),
    ("convex: wedge of 10 degrees", WEDGE, [], [2, 12, -3]),
    ("concave: angle", ANGLE, [], [3, 12.7, 60, -5, -15]),
    ("concave: comb whose gaps fill", COMB, [], [5, 14, 16, 40, -8, -14]),
    ("dumbbell", DUMBBELL, [], [4, 12.7, 29, 31, -5, -8]),
    ("plate with two holes", [(0, 0), (140, 0), (140, 100), (0, 100)], [[(20, 20), (60, 20), (60, 50), (20, 50)], [(90, 40), (120, 40), (105, 80)]], [4, 8, 25, -3, -9]),
    ("noisy: 300 points, 0.3 mm", noisy(300, 0.3, 7), [], [2, 12.7, 101.6, -4, -30]),
    ("noisy: 800 points, 1 mm", noisy(800, 1.0, 11), [], [12.7, 101.6, -12.7]),
]


def case(name, outer, holes, growths):
    outer = [(round(u, 4), round(v, 4)) for u, v in outer]
    polygon = Polygon(outer, holes)
    assert polygon.is_valid, name
    offsets = []
    for grow in growths:
        result = polygon.buffer(grow, resolution=QUARTER_SEGMENTS, join_style=1)
        parts = list(getattr(result, "geoms", [result]))
        offsets.append(
            {
                "growMm": grow,
                "pieces": len(parts),
                "holes": sum(len(part.interiors) for part in parts),
                "areaMm2": round(result.area, 4),
                "perimeterMm": round(result.length, 4),
            }
        )
    return {"name": name, "outer": outer, "holes": holes, "offsets": offsets}


print(
    json.dumps(
        {
            "source": "GEOS %s through shapely %s, Python %s" % (".".join(map(str, shapely.geos.geos_version)), shapely.__version__, platform.python_version()),
            "command": "/usr/bin/python3 tests/reference/offsets-geos.py > tests/reference/offsets-geos.json",
            "quarterSegments": QUARTER_SEGMENTS,
            "cases": [case(*shape) for shape in SHAPES],
        }
    )
)
