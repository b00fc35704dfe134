"""Made-up pairs of names with Jaro's measure and Winkler's (1990) comparator as
jellyfish computes them. Run with Debian's python3-jellyfish:

    python3 comparator.py > comparator.csv
"""
import random
import warnings

import jellyfish

warnings.simplefilter("ignore")
random.seed(1990)
SOUNDS = ["ba", "den", "ford", "gar", "hal", "is", "kel", "lyn", "mar", "no", "pres", "ros", "sut", "tor", "wen", "ël", "ça", "ø"]


def name():
    return "".join(random.choice(SOUNDS) for _ in range(random.randint(1, 5)))


def slip(s):
    r = list(s)
    for _ in range(random.randint(1, 3)):
        k = random.randrange(len(r))
        how = random.randrange(4)
        if how == 0:
            r[k] = random.choice("abcdefghijklmnopqrstuvwxyz")
        elif how == 1 and len(r) > 2:
            del r[k]
        elif how == 2:
            r.insert(k, random.choice("aeiourstn"))
        elif k + 1 < len(r):
            r[k], r[k + 1] = r[k + 1], r[k]
    return "".join(r)


print("a,b,jaro,jaro_winkler")
for n in range(600):
    a = name()
    b = slip(a) if n % 3 else name()
    print("%s,%s,%.12f,%.12f" % (a, b, jellyfish.jaro_similarity(a, b), jellyfish.jaro_winkler_similarity(a, b)))
