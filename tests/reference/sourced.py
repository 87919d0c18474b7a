"""Marks a check with the publications its expected values come from, and with what it proves.

- *independent*: an output against a figure that somebody else printed and that set none of our
  numbers, or against another library;
- *range*: an output inside a span that somebody else printed;
- *transcribed*: a number of ours equals the page it was taken from: it guards against slips of
  the pen and proves nothing more;
- *arithmetic*: plain arithmetic or a definition;
- *common practice*: no source was found, or it is from memory.

`CITED` is the list of them; `CHECKS.md` beside this file is the table of all checks, made from
the marks and the tests' own sentences:

    python -m tests.reference.sourced > tests/reference/CHECKS.md
"""

import ast
import sys
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import NamedTuple, TypeVar

T = TypeVar("T", bound=Callable[..., None])

HERE = Path(__file__).parent
CITED = {
    "AAU-mat": "Assam Agricultural University, Mechanical transplanting of rice",
    "ACRI-1532": "ACRI (Chithra, ICAR-KVK Mitraniketan), hand and machine transplanting",
    "ASABE-1700770": "Ashik-E-Rabbani et al., ASABE paper 1700770, 2017",
    "AgronJ-100-490": "Streck et al., Agronomy Journal 100:490, 2008",
    "AsiaDHRRA": "AsiaDHRRA quoting PhilRice, 40-kg technology for enough healthy seedlings",
    "BMKG": "BMKG, the weather service of Indonesia, in Tempo and Sindonews",
    "BRRI104": "AJAAR (abstract), BRRI dhan104",
    "Bogura": "Bogura district, Bangladesh government, paddy cultivation",
    "CFR-201": "Federal Seed Act Regulations, 7 CFR 201.54 and 201.55(a)",
    "DA-2022": "Philippine Department of Agriculture, 5 May 2022 (repost of PhilRice)",
    "DSSAT-RICER048": "DSSAT Foundation, CERES-Rice cultivar file RICER048.CUL",
    "ECHO-164": "ECHO Community, How to use water, an egg and salt (citing Kim et al. 2022)",
    "Ellis-1993": "Ellis et al., Rates of leaf appearance in rice, 1993 (year from memory)",
    "Engineer314": "Engineer314, Japan, rice planting notes",
    "GAB-7-1": "Kushwaha et al., GAB 7(1), NARC, 2016",
    "NARJ-4-5": "Shah and Yadav, Nepal Agriculture Research Journal 4&5:14-17, 2001/2002",
    "GNU-units": "GNU units 3.22, definitions, 2024",
    "Grainews": "Grainews, Using 1000-kernel weight to calculate seeding rate",
    "Gunma": "Takahashi et al., Japanese Journal of Crop Science 73:389, 2004",
    "ICAR-NEH": "ICAR Research Complex for North-East Hills, Rice seed production",
    "ICAR-dry": "Indian Council of Agricultural Research, Dry nursery",
    "ICAR-germination": "Indian Council of Agricultural Research, Seed germination testing",
    "ICAR-transplanting": "Indian Council of Agricultural Research, Transplanting",
    "ICAR-wet": "Indian Council of Agricultural Research, Wet nursery",
    "IIRR-LEI": "International Institute of Rural Reconstruction, Low-external input rice",
    "IJEP-5-59": "Saha et al., IJEP 5(2), 2018",
    "IJNES-64": "IJNES, article 64, tray density and transplanting of hybrid rice",
    "JCS-88-27": "Sawamoto et al., Japanese Journal of Crop Science 88:27, 2019",
    "JCS-90-269": "Itayagoshi et al., Japanese Journal of Crop Science 90:269, 2021",
    "JCS-90-382": "Japanese Journal of Crop Science 90:382, 2021",
    "Jaffna-8215": "University of Jaffna repository, item 8215 (abstract)",
    "KAU-mat": "Kerala Agricultural University, mat nursery in paddy",
    "KAU-thesis-2003": "Kerala Agricultural University, Rajesh G, thesis, 2003",
    "KR-Ryu": "Ryu, Rice production notes, Korea, 2010",
    "KrishakJagat": "Krishak Jagat, How to spray urea on standing crop, 29 Nov 2021",
    "Kubota": "Kubota, Japan, school page on soaking seed",
    "Lanka": "Department of Agriculture, Sri Lanka, wet-bed and dapog nurseries",
    "MU-Ext": "University of Missouri Extension, Lightning safety 101",
    "MSU-2013": "Walker, Mississippi State University, Rice seed rates, 2013",
    "NARC-methods": "Khan, Regmi and Bista, NARC library, methods of rice transplanting",
    "Nepal-units": "ram-krishna.com.np and nirmaljoshi.wordpress.com, land units of Nepal",
    "Nongsaro-281": "Rural Development Administration, Korea, video 281, 2005",
    "PJAR-37-29": "Pakistan Journal of Agricultural Research 37(1):29-38",
    "Pertanika-8-205": "Islam and Ahmad, Pertanika J. Sci. Technol. 8(2):205-215, 2000",
    "PhilRice-40kg": "DA-PhilRice, 40kg of high-quality rice seeds enough for 1-ha field, 2021",
    "PhilRice-FOM-2007": "PhilRice, Field Operations Manual, 2007",
    "PhilRice-KC4": "PhilRice, Key Check 4, sufficient number of healthy seedlings",
    "PhilRice-RCEF": "PhilRice, Analysts guarantee RCEF seeds' quality",
    "PhilRice-bulletin-40": "OPAPA-PhilRice, Use 40 kg certified seeds per hectare, 2010",
    "PhilRice-dapog": "PhilRice, Modified dapog preparation",
    "PhilRice-landprep": "PhilRice, Land preparation",
    "PhilRice-transplant": "PhilRice, How to transplant rice",
    "RDA-Korea": "Rural Development Administration, Korea, seed and tray guidance, 2009-2014",
    "SCIRP-113057": "Shaikh et al., Agricultural Sciences 12:1231-1243, 2021",
    "Simplot-SDS": "Simplot, safety data sheet of urea",
    "TAMU-2007": "Texas A&M University, Texas Rice Production Guidelines, 2007, p. 23",
    "UArk": "University of Arkansas, FSA2157 and rice notes, 2010",
    "UMK-NaCl": "Nicolaus Copernicus University, density of salt solutions, after WNT 1974",
    "USDA-test-weight": "USDA as quoted by Wikipedia, Test weight",
    "PAU-KVK-2015": "Singh et al., IJSART 1(4), 2015",
    "Yamagata": "Yamagata prefecture, Japan, seedling boxes, 2025",
    "agropedia": "agropedia, IIT Kanpur, methods of raising rice seedlings",
    "bigha": "charteredjournal, rhdreamhomes and housing.com, bigha by state",
    "cj11041": "Bioline International, abstract cj11041",
    "gansulong": "gansulong, China, age of machine seedlings, 2024",
    "gengzhongbang": "gengzhongbang, China, mats for machine transplanting",
    "gowu797": "gowu797, China, tray nursery notes",
    "scipy": "scipy, a statistics library",
    "ehinga": "ehinga.org, Rwanda, Planting of rice",
    "GreenSkills": "greenagricultureskills.com, seedbed for single seedlings, 2016",
    "FAO-INADES": "FAO and INADES, Better Farming Series 21, Wet paddy or swamp rice, 1977 "
    "(sections 14 and 43, nzdl.org)",
    "TefySaina": "Association Tefy Saina, Madagascar, manual on single seedlings, table in "
    "a thesis (memoireonline.com, section 1.3.1, table 6)",
    "ICAR-boro": "ICAR-DRR rice portal, Transplanting (kharif and boro), rkmp.co.in",
    "teachers-bd": "Teachers' portal, Bangladesh government, Transplanting rice, 2023",
    "Amanat": "Amanat seed, Bangladesh, sheet of Bangabandhu dhan100 (after BRRI)",
    "KAU-LEADS": "Kerala Agricultural University, mat nursery by hand (rkmp.co.in news)",
    "Zaulimi": "Zaulimi, Malawi, Rice: nursery preparation and sowing; planting",
    "ICAR-Punjab": "ICAR-DRR rice portal, Mat nursery in Punjab",
    "PAU-transplanting": "ICAR-DRR rice portal, Transplanting (Punjab)",
    "AICRIP": "ICAR-DRR rice portal, Seed density in nursery (AICRIP trials)",
    "Batang": "Ministry of Agriculture, Indonesia (Batang), Persemaian menggunakan dapog",
    "2lua": "2lua.vn, Lam ma khay cho cay may, 2017",
    "congnghe": "congnghetuoitudong.vn, two ways of raising seedlings compared",
    "sovetysad": "sovetysad.ru, grams of urea in a spoon",
    "harvesthub": "harvesthub, grams of fertilizers in a spoon",
    "habinfo": "habinfo, measures for fertilizers",
    "adzumi": "adzumi-sushi.ru, fertilizers in spoons and pails",
    "tradeinfact": "tradeinfact.com, granular urea",
    "shikisyuunou": "shikisyuunou.blogspot.com, Japan, salt water for seed, 2020",
    "arithmetic": "plain arithmetic or a definition",
    "memory": "from memory, said to be so in the test",
    "consistency": "a consistency check with common practice, no source",
}
NO_PUBLISHER = frozenset({"arithmetic", "memory", "consistency", "scipy"})


INDEPENDENT, RANGE, TRANSCRIBED = "independent", "range", "transcribed"
ARITHMETIC, PRACTICE = "arithmetic", "common practice"
KINDS = (INDEPENDENT, RANGE, TRANSCRIBED, ARITHMETIC, PRACTICE)
_BY_NAME = {
    "INDEPENDENT": INDEPENDENT,
    "RANGE": RANGE,
    "ARITHMETIC": ARITHMETIC,
    "PRACTICE": PRACTICE,
}


def source(*keys: str, kind: str = TRANSCRIBED) -> Callable[[T], T]:
    """Names the publications behind a check, by their keys in `CITED`, and what it proves; the
    humblest kind where none is named."""
    if kind not in KINDS:
        raise LookupError(f"expected one of {KINDS}, got {kind!r}")
    unknown = [key for key in keys if key not in CITED]
    if unknown or not keys:
        raise LookupError(f"expected keys of CITED, got {keys}; add {unknown} to it")
    return lambda test: test


class Check(NamedTuple):
    """One marked test: where it stands, what it says, and its sources."""

    module: str
    name: str
    says: str
    sources: tuple[str, ...]
    kind: str


def checks() -> Iterator[Check]:
    """All marked tests, in the order of their files."""
    for path in sorted(HERE.glob("test_*.py")):
        for node in ast.parse(path.read_text(encoding="utf-8")).body:
            if isinstance(node, ast.FunctionDef) and (mark := _mark(node)):
                keys = tuple(
                    str(each.value) for each in mark.args if isinstance(each, ast.Constant)
                )
                says = " ".join((ast.get_docstring(node) or "").split())
                yield Check(path.stem, node.name, says, keys, _kind(mark))


def _mark(node: ast.FunctionDef) -> ast.Call | None:
    marks = (mark for mark in node.decorator_list if isinstance(mark, ast.Call))
    return next((mark for mark in marks if getattr(mark.func, "id", "") == "source"), None)


def _kind(mark: ast.Call) -> str:
    names = (getattr(each.value, "id", "") for each in mark.keywords if each.arg == "kind")
    return next((_BY_NAME[name] for name in names), TRANSCRIBED)


_MEANS = """\
- independent: an output of the program against a figure that somebody else printed and that set
  none of our numbers, or against another library;
- range: an output inside a span that somebody else printed;
- transcribed: a number of ours equals the page it was taken from. It guards against slips of
  the pen and proves nothing more;
- arithmetic: plain arithmetic, a formula worked by hand, or a definition;
- common practice: no source was found, or it is from memory and says so.

Whole nurseries, with bed and seed out of one page: three. Fifteen were asked for; others print
one figure that comes out and one that does not, which the check says.
"""


def page() -> str:
    """The table of all checks, in Markdown."""
    found = list(checks())
    counts = "".join(
        f"| {kind} | {sum(each.kind == kind for each in found)} |\n" for kind in KINDS
    )
    rows = "".join(
        f"| {each.kind} | {each.name.removeprefix('test_').replace('_', ' ')} | {each.says} "
        f"| {'; '.join(CITED[key] for key in each.sources)} |\n"
        for each in sorted(found, key=lambda each: KINDS.index(each.kind))
    )
    return (
        "# Checks against the world outside\n\n"
        "Made from the tests beside this file; do not edit it by hand:\n\n"
        "```sh\npython -m tests.reference.sourced > tests/reference/CHECKS.md\n```\n\n"
        f"{len(found)} checks. What each kind proves:\n\n{_MEANS}\n"
        f"| kind | checks |\n|---|---|\n{counts}\n"
        f"| kind | check | what it says | source |\n|---|---|---|---|\n{rows}"
    )


if __name__ == "__main__":
    sys.stdout.write(page())
