"""Writes opencv.csv.gz: what OpenCV makes of a thousand scenes by chance, for photo_opencv.rs to hold ours against.

    python3 -m venv venv && venv/bin/pip install opencv-python-headless && venv/bin/python opencv.py

Columns: eight numbers of the corners of a card in the picture; the number of points of the outline and their places in
the picture; the nine numbers of getPerspectiveTransform from the card (85.60 by 53.98 mm) into the picture; then of the
outline brought back onto the card's plane: contourArea, the greatest distance of two corners of convexHull, the least width
of the hull over the directions of its sides, and the area of minAreaRect.
"""

import gzip
import math
import random

import cv2
import numpy as np

CARD = np.array([[0, 0], [85.60, 0], [85.60, 53.98], [0, 53.98]], dtype=np.float32)


def camera(focal, far, tilt, side, roll):
    """Rows right, down, ahead, and where the camera is; the table is z = 0."""
    ahead = np.array([-math.sin(tilt) * math.cos(side), -math.sin(tilt) * math.sin(side), -math.cos(tilt)])
    flat = np.array([-math.sin(side), math.cos(side), 0.0])
    right = math.cos(roll) * flat + math.sin(roll) * np.cross(ahead, flat)
    return np.array([right, np.cross(ahead, right), ahead]), -ahead * far


def seen(points, focal, axes, place):
    points = np.column_stack([points, np.zeros(len(points))]) - place
    x, y, z = (points @ axes.T).T
    return np.column_stack([2000 + focal * x / z, 1500 + focal * y / z])


def scene():
    focal, far, tilt = random.uniform(2500, 3600), random.uniform(420, 800), math.radians(random.uniform(0, 25))
    axes, place = camera(focal, far, tilt, random.uniform(0, 2 * math.pi), random.uniform(0, 2 * math.pi))
    place = place + [random.uniform(-80, 80), random.uniform(-80, 80), 0]
    count, radius = random.randint(24, 40), random.uniform(60, 120)
    waves = [(random.uniform(0, 0.13), random.uniform(0, 6.28)) for _ in range(3)]
    angles = np.arange(count) * 2 * math.pi / count
    radii = radius * (1 + sum(share * np.cos(n * angles + phase) for n, (share, phase) in zip((2, 3, 4), waves)))
    outline = np.column_stack([radii * np.cos(angles) + 150, radii * np.sin(angles)])
    # Rounded as they are written, so that both sides are given the same numbers.
    return np.round(seen(CARD, focal, axes, place), 2), np.round(seen(outline, focal, axes, place), 1)


def width(hull):
    best = math.inf
    for a, b in zip(hull, np.roll(hull, -1, axis=0)):
        x, y = (b - a) / np.linalg.norm(b - a)
        across = hull @ np.array([-y, x])
        best = min(best, across.max() - across.min())
    return best


random.seed(85_60)
lines = []
while len(lines) < 1000:
    corners, outline = scene()
    matrix = cv2.getPerspectiveTransform(CARD, corners.astype(np.float32))
    back = cv2.perspectiveTransform(outline.reshape(-1, 1, 2), np.linalg.inv(matrix)).astype(np.float32)
    hull = cv2.convexHull(back).reshape(-1, 2).astype(float)
    longest = max(np.linalg.norm(a - b) for a in hull for b in hull)
    (_, (one, other), _) = cv2.minAreaRect(back)
    sizes = [cv2.contourArea(back), longest, width(hull), one * other]
    numbers = [*corners.ravel(), len(outline), *outline.ravel()]
    lines.append(",".join([*(f"{n:.2f}".rstrip("0").rstrip(".") for n in numbers), *(f"{n:.9g}" for n in [*matrix.ravel(), *sizes])]))
with gzip.GzipFile("opencv.csv.gz", "wb", 9, mtime=0) as file:
    file.write(("\n".join(lines) + "\n").encode())
print(f"OpenCV {cv2.__version__}")
