"""Homographies by OpenCV, and by MINPACK through SciPy, as reference values for lib/core/geometry/homography.

Run: /usr/bin/python3 tests/reference/homography-opencv.py > tests/reference/homography-opencv.json
Every camera, face and mark is invented. cv2.findHomography with method 0 takes all points: direct linear transform, then
for more than four points least squares of the distances in the destination (the face, mm). It rounds its points to single
precision, so marks stand on sixteenths of a pixel and of a millimetre, which single precision holds exactly.

OpenCV takes ten steps on figures that it doesn't scale and stops short of the least sum where the perspective is strong. So
for more than four marks its answer is also handed to MINPACK's lmdif (scipy.optimize.least_squares, method "lm", numerical
derivatives), which makes the same sum least to the last digits. Both sums are stored.
"""

import json
import math
import platform
import random

import cv2
import numpy
import scipy
from scipy.optimize import least_squares


def sixteenths(value):
    return round(value * 16) / 16


def camera(tilt_deg, turn_deg, distance_mm, focal_px, aim_mm=(200.0, 150.0), middle_px=(2016.0, 1512.0)):
    """A pinhole camera over the face, v upwards on the face and y downwards in the picture: [u, v] -> [x, y]."""
    tilt, turn = math.radians(tilt_deg), math.radians(turn_deg)

    def shoot(point):
        u, v = point[0] - aim_mm[0], point[1] - aim_mm[1]
        u, v = u * math.cos(turn) - v * math.sin(turn), u * math.sin(turn) + v * math.cos(turn)
        depth = distance_mm + v * math.sin(tilt)
        return (middle_px[0] + focal_px * u / depth, middle_px[1] - focal_px * v * math.cos(tilt) / depth)

    return shoot


CORNERS = [(0.0, 0.0), (400.0, 0.0), (400.0, 300.0), (0.0, 300.0)]
EIGHT = CORNERS + [(200.0, 0.0), (400.0, 150.0), (187.5, 300.0), (0.0, 137.5)]
TWELVE = EIGHT + [(100.0, 75.0), (300.0, 75.0), (312.5, 225.0), (87.5, 225.0)]
FAR = [(u + 12000.0, v - 8000.0) for u, v in EIGHT]
OUTLINE = [(60.0, 50.0), (340.0, 62.5), (325.0, 260.0), (180.0, 280.0), (75.0, 240.0)]
BEYOND = [(-80.0, -60.0), (480.0, -40.0), (460.0, 380.0), (-50.0, 370.0)]

WEAK = camera(8, 5, 2500, 9000)
STRONG = camera(55, -20, 700, 2600)
FAR_CAMERA = camera(30, 12, 1500, 5200, aim_mm=(12200.0, -7850.0))

CASES = [
    ("four exact marks, weak perspective", CORNERS, WEAK, 0, OUTLINE + BEYOND, 1),
    ("four exact marks, strong perspective", CORNERS, STRONG, 0, OUTLINE + BEYOND, 2),
    ("four marks anywhere", [(12.5, 30.0), (371.0, -20.0), (420.0, 260.0), (60.0, 333.0)], STRONG, 8, OUTLINE, 3),
    ("eight marks, noise 0.4 mm, weak perspective", EIGHT, WEAK, 0.4, OUTLINE + BEYOND, 4),
    ("eight marks, noise 0.4 mm, strong perspective", EIGHT, STRONG, 0.4, OUTLINE + BEYOND, 5),
    ("eight marks, noise 3 mm, strong perspective", EIGHT, STRONG, 3, OUTLINE, 6),
    ("twelve marks, noise 0.4 mm, strong perspective", TWELVE, STRONG, 0.4, OUTLINE + BEYOND, 7),
    ("eight marks far from the datum, noise 0.4 mm", FAR, FAR_CAMERA, 0.4, [(u + 12000.0, v - 8000.0) for u, v in OUTLINE], 8),
]


def placed(matrix, points):
    whole = (matrix @ numpy.column_stack([points, numpy.ones(len(points))]).T).T
    return whole[:, :2] / whole[:, 2:]


def scaled(points):
    """Moves and scales points to the size of 1."""
    (x, y), size = points.mean(axis=0), points.std()
    return numpy.array([[1 / size, 0, -x / size], [0, 1 / size, -y / size], [0, 0, 1]])


def finished(matrix, pixels, known):
    """The same sum of squares made least by MINPACK, from OpenCV's answer on."""
    to, back = scaled(pixels), numpy.linalg.inv(scaled(known))
    start = numpy.linalg.inv(back) @ matrix @ numpy.linalg.inv(to)

    def whole(eight):
        return back @ numpy.append(eight, 1).reshape(3, 3) @ to

    found = least_squares(lambda eight: (placed(whole(eight), pixels) - known).ravel(), (start / start[2, 2]).ravel()[:8], method="lm", xtol=1e-15, ftol=1e-15, gtol=1e-15)
    return whole(found.x)


def told(matrix, pixels, known, traced):
    residuals = numpy.linalg.norm(placed(matrix, pixels) - known, axis=1)
    return {
        "placedMm": placed(matrix, traced).round(6).tolist(),
        "residualsMm": residuals.round(6).tolist(),
        "sumMm2": float((residuals**2).sum()),
    }


def case(name, face, shoot, noise_mm, outline, seed):
    source = random.Random(seed)
    pixels = numpy.array([[sixteenths(value) for value in shoot(point)] for point in face])
    known = numpy.array([[sixteenths(value + source.gauss(0, noise_mm)) if noise_mm else value for value in point] for point in face])
    traced = numpy.array([[sixteenths(value) for value in shoot(point)] for point in outline])
    matrix, _ = cv2.findHomography(pixels, known, 0)
    return {
        "name": name,
        "noiseMm": noise_mm,
        "marks": [{"atPx": pixel, "atMm": point} for pixel, point in zip(pixels.tolist(), known.tolist())],
        "tracedPx": traced.tolist(),
        "opencv": told(matrix, pixels, known, traced),
        "minpack": told(finished(matrix, pixels, known), pixels, known, traced) if len(face) > 4 else None,
    }


print(
    json.dumps(
        {
            "source": "OpenCV %s, cv2.findHomography with method 0; MINPACK through SciPy %s; NumPy %s, Python %s"
            % (cv2.__version__, scipy.__version__, numpy.__version__, platform.python_version()),
            "command": "/usr/bin/python3 tests/reference/homography-opencv.py > tests/reference/homography-opencv.json",
            "cases": [case(*each) for each in CASES],
        }
    )
)
