"""Asks general libraries about the pictures of draw-inputs.ts and writes what they answer to regions.json and planes.json.

    python3 -m venv .cache/references
    .cache/references/bin/pip install scikit-image==0.26.0 scipy==1.17.1 numpy==2.4.6
    .cache/references/bin/python tests/leaf/references/make-references.py
    npx biome format --write tests/leaf/references

Only needed when the pictures change: the tests read the JSON alone.
"""

import json
import pathlib
import subprocess

import numpy as np
import scipy
import skimage
from scipy import ndimage, spatial
from skimage import feature, filters, measure

HERE = pathlib.Path(__file__).parent
LIBRARIES = f"scikit-image {skimage.__version__}, scipy {scipy.__version__}, numpy {np.__version__}"
drawn = json.loads(subprocess.check_output(["npx", "tsx", str(HERE / "draw-inputs.ts")]))


def array(shape, values, kind=float):
    return np.array(values, dtype=kind).reshape(shape["height"], shape["width"])


def runs(mask):
    """Lengths of runs in reading order, the first of pixels that are out."""
    flat = np.concatenate([[0], mask.astype(int).ravel()])
    edges = np.flatnonzero(np.diff(flat)) if flat.any() else np.array([], dtype=int)
    return np.diff(np.concatenate([[0], edges, [mask.size]])).tolist()


def regions(mask, connectivity):
    """Sizes in reading order of the first pixel, and for each region the sum of its pixels' indices."""
    labels = measure.label(mask, connectivity=connectivity)
    index = np.arange(mask.size).reshape(mask.shape)
    some = range(1, labels.max() + 1)
    return {
        "sizes": [int(np.sum(labels == k)) for k in some],
        "indices": [int(index[labels == k].sum()) for k in some],
        "euler": int(measure.euler_number(mask, connectivity=connectivity)),
    }


def shape_of(mask):
    """Measures of the largest region (corners connect), holes filled."""
    labels = measure.label(mask, connectivity=2)
    largest = 1 + np.argmax([np.sum(labels == k) for k in range(1, labels.max() + 1)])
    whole = ndimage.binary_fill_holes(labels == largest)
    (one,) = measure.regionprops(whole.astype(int))
    ys, xs = np.nonzero(whole)
    corners = np.concatenate([np.stack([xs + dx, ys + dy], 1) for dx in (0, 1) for dy in (0, 1)])
    return {
        "runs": runs(whole),
        "area": int(one.area),
        "centre": [round(float(v), 6) for v in reversed(one.centroid)],
        "major": round(float(one.axis_major_length), 4),
        "minor": round(float(one.axis_minor_length), 4),
        # Measured by the library from the rows' axis; here from the columns', clockwise as y points down.
        "angle": round(float(np.pi / 2 - one.orientation), 5),
        "eccentricity": round(float(one.eccentricity), 5),
        "hullArea": float(spatial.ConvexHull(corners).volume),
        "solidity": round(float(one.solidity), 5),
        "perimeterCrofton": round(float(measure.perimeter_crofton(np.pad(whole, 2), directions=4)), 3),
    }


def mask_answers(one):
    mask = array(one, one["data"], int) == 255
    inside = np.flatnonzero(mask.ravel())[::5]
    squared = np.rint(ndimage.distance_transform_edt(mask).ravel()[inside] ** 2).astype(int)
    return {
        "name": one["name"],
        "pixels": int(mask.sum()),
        "four": regions(mask, 1),
        "eight": regions(mask, 2),
        "filled": runs(ndimage.binary_fill_holes(mask)),
        "distanceSquaredEveryFifthInside": squared.tolist(),
        "shape": shape_of(mask),
    }


def mean_inside(values, mask, sigma):
    """Normalised convolution (Knutsson and Westin 1993) from the library's Gaussian."""
    def blur(plane):
        return ndimage.gaussian_filter(plane, sigma, mode="constant", truncate=6)

    return blur(values * mask) / np.maximum(blur(mask.astype(float)), 1e-12)


plane = drawn["plane"]
values = array(plane, plane["values"])
leaf = array(plane, plane["mask"], int) == 255
veins = array(plane, plane["veins"], int) == 255
places = np.flatnonzero(leaf.ravel())[::311]

# What is asked of blurInside, and the width that its boxes of whole pixels come to: three boxes of 2r + 1 cells, the cell
# itself and the line between two cells add their variances.
WIDTHS = [
    {"asked": 1.0, "meant": np.sqrt(2)},
    {"asked": 2.0, "meant": np.sqrt(6)},
    {"asked": 3.3, "meant": np.sqrt(12)},
    {"asked": 4.4, "meant": np.sqrt(4 * 6 + 3 / 12 + 4 / 6)},
    {"asked": 7.4, "meant": np.sqrt(16 * 2 + 15 / 12 + 16 / 6)},
    {"asked": 19.6, "meant": np.sqrt(100 * 6 + 99 / 12 + 100 / 6)},
]


def ridge(sigma):
    """|greatest eigenvalue of the Hessian| less twice the other, by the library's Gaussian derivatives inside the leaf."""
    # What lies outside is the mean of the leaf near it, as for the blur: a far plain ground would be an edge.
    near = np.where(leaf, values, mean_inside(values, leaf, sigma))
    hessian = feature.hessian_matrix(near, sigma=sigma, mode="nearest", use_gaussian_derivatives=True)
    first, second = np.abs(feature.hessian_matrix_eigvals(hessian))
    return np.maximum(first, second) - 2 * np.minimum(first, second)


size = np.sqrt(leaf.sum())
deep = ndimage.distance_transform_edt(leaf) > 0.02 * size


def keep_long(lines):
    labels = measure.label(lines & leaf & deep, connectivity=2)
    out = np.zeros_like(leaf)
    for one in measure.regionprops(labels):
        top, left, bottom, right = one.bbox
        if max(bottom - top, right - left) - 1 >= 0.125 * size:
            out |= labels == one.label
    return out


def f_score(lines):
    """Twice the pixels both marked and on a drawn vein over the sum of both (harmonic mean of precision and recall)."""
    inner = leaf & deep
    hit = np.sum(lines & veins & inner)
    return float(2 * hit / (np.sum(lines & inner) + np.sum(veins & inner)))


same_rule = keep_long(np.maximum(ridge(np.sqrt(6)), ridge(np.sqrt(4 * 6 + 3 / 12 + 4 / 6))) > 0.55)
# The library's own line filter (Sato et al. 1998) at the drawn veins' width, cut where it does best on this picture.
near = np.where(leaf, values, mean_inside(values, leaf, 3))
tube = np.maximum(filters.sato(near, sigmas=[1.8], black_ridges=False), filters.sato(near, sigmas=[1.8], black_ridges=True))
best = max((f_score(keep_long(tube > cut)), float(cut)) for cut in np.quantile(tube[leaf], np.linspace(0.5, 0.98, 49)))

(HERE / "regions.json").write_text(
    json.dumps({"by": LIBRARIES, "masks": [mask_answers(one) for one in drawn["masks"]]}) + "\n"
)
(HERE / "planes.json").write_text(
    json.dumps(
        {
            "by": LIBRARIES,
            "pixels": int(leaf.sum()),
            "sum": round(float(values.sum()), 1),
            "places": places.tolist(),
            "blurs": [
                {
                    "asked": one["asked"],
                    "meantPx": round(float(one["meant"]), 4),
                    "meant": np.round(mean_inside(values, leaf, one["meant"]).ravel()[places], 3).tolist(),
                    "nominal": np.round(mean_inside(values, leaf, one["asked"]).ravel()[places], 3).tolist(),
                }
                for one in WIDTHS
            ],
            "sameRule": {"f": round(f_score(same_rule), 4)},
            "sato": {"bestF": round(best[0], 4), "cut": round(best[1], 4)},
        }
    )
    + "\n"
)
