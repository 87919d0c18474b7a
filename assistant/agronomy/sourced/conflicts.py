"""Where publishers disagree: who says what, what the program accepts, and why.

The last two columns are our judgement from the spread of what was found, no published limits.
"""

from typing import NamedTuple


class Conflict(NamedTuple):
    """One topic on which sources part."""

    topic: str
    said: str
    accepted: str
    why: str


CONFLICTS = (
    Conflict(
        "nursery for a hectare",
        "8-12 m2 (Japan, high density, JCS 88:27); 25-31 m2 (PhilRice nets); 40-49 m2 "
        "(Yamagata, Korea); 61-78 m2 of trays, 100-125 with paths (China); 200 m2 (Kerala "
        "Agricultural University); 400 m2 wet bed (PhilRice); 500 m2 (Bangladesh); 1,000 "
        "m2 (ICAR, Sri Lanka)",
        "mat 40-200 m2, planned with 100; wet bed 400; dry bed 1,000; trays 49",
        "they are different beds: area follows from the seed and its density, so the bed "
        "grows where seeds would lie too thick",
    ),
    Conflict(
        "seed on a square metre",
        "100 g (PhilRice wet bed); 400-500 g (PhilRice nets); 555-680 g (Pakistan); "
        "924-1,108 g (Japan); 1,230-1,850 g for seedlings of 8-12 days (Korea, Japan); "
        "3,000 g (agropedia, dapog)",
        "mat at most 2 seeds on a cm2, 500 g at 25 g for 1000 grains; trays 3.7",
        "seedlings of 15-20 days need more room than those of 8-12",
    ),
    Conflict(
        "seed for a hectare",
        "10-15 kg (PhilRice nets, hybrid and inbred); 20-40 (PhilRice); 30-45 (Korea, "
        "Japan, machine); 50-60 (ICAR); 75-125 (dapog); single seedlings: 12 "
        "(Malawi), 2 kg for an acre (India)",
        "10-60 kg without a word, from 5 with one seedling a hill; outside it a warning",
        "classic dapog sows seedlings of 11-14 days, which is another practice",
    ),
    Conflict(
        "soil over the seed",
        "none, kept covered (Gyeongju); 3-5 mm (China); 3.1-5.5 (Korea, derived); 7 "
        "(Gunma); 10 best of 5-20 in a substrate trial (Agronomy 14:98); 10-15 (ICAR, dry "
        "seeding)",
        "3-10 mm",
        "deeper figures are for seed in open fields; beyond 40 mm establishment falls sharply",
    ),
    Conflict(
        "thickness of the mat",
        "18 mm at the least (Gunma); 21-25 (China); 24 (Gunma, usual); 25-31 (Korea, Japan)",
        "18-40 mm, planned with 40 (common practice)",
        "a mat lifted by hand in a frame holds together better when it is thick; it weighs "
        "more",
    ),
    Conflict(
        "salt water for choosing seed",
        "1.13 (Korea, Japan); 1.10 (Tamagawa, ICAR's recipe); 1.08 as Kasetsart University "
        "labels a recipe that makes 1.105; 1.06 where an egg just floats (ECHO); 1.01 "
        "(urea, Bangladesh)",
        "1.05-1.13 kg/L, recipe for 1.10",
        "1.13 was set for round grains; an egg that just floats is only the low end",
    ),
    Conflict(
        "soaking and sprouting",
        "24 h and 24-48 h (Sri Lanka); 24 h and 40-72 h (Bangladesh); 12-24 h and 24-36 h "
        "(PhilRice); 5-10 days in cold water (Japan, Korea)",
        "24 h and 24 h in warm water; below 20 C by summed warmth; slow varieties twice as "
        "long",
        "100 degree-days fit cold water only: at 30 C they would ask 3.3 days where 1 is "
        "practice",
    ),
    Conflict(
        "age at transplanting",
        "8-12 days (Korea, infant); 11-14 (dapog); 13-20 (China); 15-20 (Assam, warm); 16 "
        "best (Jaffna); 20-25 (Yamagata, PhilRice wet bed); 20-24 with 3-4 leaves (PAPRIZ, "
        "Madagascar, October, about 20 C, where ours take 24-31); 25-30 (Bangladesh, cool "
        "season); 30-35 with 4 leaves (ICAR portal, boro); 35-40 sown in late November "
        "(Amanat seed, Bangladesh); 25-45 by season (Bangladesh, teachers' portal)",
        "mat 15-20, wet and dry bed 20-25, trays 15-22 days; 8-45 is asked about",
        "the count of leaves decides; cool weather is slower",
    ),
    Conflict(
        "nitrogen for yellow seedlings",
        "1.3 g/m2 (ICAR, dry bed); 9-18 (International Institute of Rural Reconstruction); "
        "11.5 (AIC); 23 (agropedia, probably a slip of units)",
        "6.9 g/m2 for every practice, once",
        "inside 2-12 g/m2; the weak spray is safest where nobody looks on",
    ),
    Conflict(
        "strength of a urea spray",
        "0.5 % (nurseries, common practice); 2-3 % (Krishak Jagat, field crops)",
        "0.5 %, never stronger",
        "what a field crop bears burns seedlings",
    ),
    Conflict(
        "hour of spraying",
        "after the dew has dried, calm (Krishak Jagat); towards evening or on a dull day "
        "(Seedsun)",
        "evening, then rinse",
        "both avoid strong sun, rain and wind; rinsing takes off what could burn next day",
    ),
    Conflict(
        "iron spray",
        "0.5 % ferrous sulphate (agropedia); 2 % (Directorate of Rice Research, 2005)",
        "none: yellow young leaves go to the officer",
        "a fourfold conflict is no base for advice by text",
    ),
    Conflict(
        "least germination",
        "85 % (Philippines; ICAR, hybrid seed); 80 % (Bangladesh; India, from memory)",
        "80 %, by country where one is known",
        "a setting of the place; 60-79 % is planned with a warning, less is not sown",
    ),
    Conflict(
        "heavy rain in a day",
        "25 mm (China, from memory); 35.1 (Thailand); 44 (Bangladesh); 50 (Indonesia, "
        "Nepal); 64.5 (India)",
        "the country's own classes, each ending where the next begins",
        "an officer speaks the words of the national service; printed gaps are closed",
    ),
    Conflict(
        "what to do in heavy rain",
        "drain surplus water (agropedia); deepen it beforehand (Yunhe, direct-seeded fields)",
        "cover the mats and drain",
        "mats lie in the open and wash away; deeper water is for seed in a field",
    ),
    Conflict(
        "what old seedlings cost",
        "38.44 % less two weeks late (GAB 7(1)), at one cool site high up, where the date "
        "moved with the age; 44 and 47 % less with 40 days instead of 20, denser and unfed "
        "(cj11041); age had no effect, the date had: 25.6 and 37.5 % less on 1 September than "
        "on 14 July (NARJ 4&5:14-17)",
        "told as a span from nothing to 2.7 % of the harvest a day late, and that trials "
        "disagree",
        "an effect of date, cold and density is not one of age; a farmer must know the worst "
        "and how little is sure",
    ),
    Conflict(
        "gap filling",
        "within 7 days (PhilRice); at 1 week and again 15 days later (ICAR)",
        "7 days after transplanting",
        "later fillers ripen late",
    ),
    Conflict(
        "bulk density of paddy",
        "0.40-0.51 kg/L (Malay measures); 0.58 (USDA); 0.608 (Punjab Agricultural University)",
        "0.55-0.62 kg/L, told with 0.58",
        "the low figures come from a measure of capacity, not from weighing",
    ),
    Conflict(
        "grains in a kilogram",
        "40,000 and 45,000 by one publisher (PhilRice)",
        "25 g for 1000 grains unless weighed or named by variety",
        "varieties differ from 19 to 30 g: weigh your own",
    ),
    Conflict(
        "leaves in great heat",
        "degree-days go on rising (crop models); no faster above 26 C (Streck 2008, Ellis "
        "1993)",
        "no warmth above 26 C is counted",
        "trials agree on the plateau",
    ),
    Conflict(
        "cost of mats",
        "dearer to raise than a wet bed (Pertanika 8:205; Pakistan J. Agric. Res. 36:169); "
        "cheaper on the whole (Kerala Agricultural University; SeedQuest 2006)",
        "no figure is promised; the programme's own prices are summed on both sides",
        "prices of earth, sheet and labour decide, and they differ by village",
    ),
    Conflict(
        "hands for planting",
        "250 person-hours a hectare or 40 workers (Kerala KVK); 126 (IJNES 64); 30-35 and "
        "15 workers in one paper (Khan, Regmi and Bista)",
        "126-320 person-hours, told as a span",
        "soil, spacing and custom differ more than any one figure can tell",
    ),
    Conflict(
        "bigha, katha, sao and other units of land",
        "632 to 6,773 m2 for a bigha, with conflicts inside one state",
        "only with a region whose size is settled; else it is asked back",
        "a wrong unit is a tenfold error in the seed",
    ),
)
