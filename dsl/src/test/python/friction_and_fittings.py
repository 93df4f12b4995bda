"""Computes friction factors, fitting losses and flow coefficients with the library fluids, one case a line."""

import sys

from fluids.fittings import Cv_to_Kv, Darby3K, Hooper2K, K_to_Kv, Kv_to_Cv, Kv_to_K
from fluids.friction import Colebrook

COMPUTE = {
    "colebrook": lambda reynolds, roughness: Colebrook(reynolds, roughness),
    "two": lambda inches, reynolds, k1, k: Hooper2K(inches, reynolds, K1=k1, Kinfty=k),
    "three": lambda inches, reynolds, k1, ki, kd: Darby3K(NPS=inches, Re=reynolds, K1=k1, Ki=ki, Kd=kd),
    "kv": lambda kv: Kv_to_Cv(kv),
    "cv": lambda cv: Cv_to_Kv(cv),
    "k": lambda kv, metres: Kv_to_K(kv, metres),
    "kofk": lambda k, metres: K_to_Kv(k, metres),
}

for line in sys.stdin:
    name, *numbers = line.split()
    print(repr(float(COMPUTE[name](*map(float, numbers)))))
