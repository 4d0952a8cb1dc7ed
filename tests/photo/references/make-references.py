"""Asks a general library about seeded colours and writes colours.json beside this file.

    python3 -m venv .cache/references
    .cache/references/bin/pip install scikit-image==0.26.0 scipy==1.17.1 numpy==2.4.6
    .cache/references/bin/python tests/photo/references/make-references.py
    npx biome format --write tests/photo/references

Only needed when other colours are to be asked about: the tests read the JSON alone.
"""

import json
import pathlib

import numpy as np
import skimage
from skimage import color

seeded = np.random.default_rng(5)
# All over the cube, then leaves, soils and straw: hue 20–150 degrees.
anywhere = seeded.integers(0, 256, (40, 3))
hsv = seeded.uniform([20 / 360, 0.1, 0.1], [150 / 360, 0.95, 0.95], (80, 3))
colours = np.concatenate([anywhere, np.rint(255 * color.hsv2rgb(hsv)).astype(int)])
lab = color.rgb2lab(colours[None] / 255, illuminant="D65", observer="2")[0]
in_hsv = color.rgb2hsv(colours[None] / 255)[0] * [360, 1, 1]
first, second = lab[:60], lab[60:]
rows = {
    "by": f"scikit-image {skimage.__version__}, numpy {np.__version__}",
    "colours": colours.tolist(),
    "lab": np.round(lab, 4).tolist(),
    "hsv": np.round(in_hsv, 5).tolist(),
    # Of each of the first half of the colours from its counterpart in the second.
    "ciede2000": np.round(color.deltaE_ciede2000(first, second), 5).tolist(),
}
(pathlib.Path(__file__).parent / "colours.json").write_text(json.dumps(rows) + "\n")
