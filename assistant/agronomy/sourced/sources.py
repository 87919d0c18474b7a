"""Who published a figure: one row per publication, cited by name from the constants.

Where a title was not seen, what the page is about stands in [brackets].
"""

from dataclasses import dataclass


@dataclass(frozen=True)
class Source:
    """A publication that a person can look up."""

    publisher: str
    title: str
    year: str

    def __str__(self) -> str:
        return f"{self.publisher}, {self.title}, {self.year}"


UNDATED = "no year printed"

PHILRICE_40KG = Source(
    "DA-PhilRice", "40kg of high-quality rice seeds enough for 1-ha field", "2021"
)
PHILRICE_KC4 = Source(
    "PhilRice", "Key Check 4: sufficient number of healthy seedlings", UNDATED
)
PHILRICE_DAPOG = Source("PhilRice", "Modified dapog preparation (Key Check 3)", UNDATED)
PHILRICE_TRANSPLANT = Source("PhilRice", "How to transplant rice (Key Check 3)", UNDATED)
ARFAN_2017 = Source(
    "Experimental Agriculture 53(4), Arfan et al.",
    "Sowing methods and water levels influence apple snail damage to rice and its yield in "
    "Peninsular Malaysia",
    "2017",
)
PHILRICE_FIELD_OPERATIONS = Source(
    "PhilRice", "Field Operations Manual, land preparation", "2007"
)
PHILRICE_PREPARE = Source("PhilRice", "Prepare rice field (Key Check 2)", UNDATED)
PHILRICE_RCEF = Source("PhilRice", "Analysts guarantee RCEF seeds' quality", UNDATED)
DA_2022 = Source(
    "Philippine Department of Agriculture", "PhilRice pushes higher rice yield (repost)", "2022"
)
ASIADHRRA = Source(
    "AsiaDHRRA, quoting PhilRice", "40-kg technology for enough healthy seedlings", UNDATED
)
ARKANSAS_FSA2157 = Source(
    "University of Arkansas (Runsick and Wilson)",
    "FSA2157 Rice seeding rate recommendations for Arkansas",
    UNDATED,
)
MISSISSIPPI_2013 = Source("Mississippi State University (Walker)", "Rice seed rates", "2013")
DSSAT_RICE = Source(
    "DSSAT Foundation", "CERES-Rice cultivar coefficients, RICER048.CUL", "model 4.8"
)
BOGURA = Source("Bogura district, Bangladesh government", "[paddy cultivation]", UNDATED)
ICAR_WET = Source("Indian Council of Agricultural Research", "Wet nursery", UNDATED)
ICAR_GERMINATION = Source(
    "Indian Council of Agricultural Research", "Seed germination testing, part 1", UNDATED
)
ICAR_HILLS = Source("Indian Council of Agricultural Research", "Transplanting, part 1", UNDATED)
ICAR_IRRIGATED = Source(
    "Indian Council of Agricultural Research", "Transplanting for irrigated rice", UNDATED
)
LANKA_DAPOG = Source("Department of Agriculture, Sri Lanka", "[dapog nursery]", UNDATED)
LANKA_WET = Source("Department of Agriculture, Sri Lanka", "[wet-bed nursery]", UNDATED)
ASSAM_MAT = Source("Assam Agricultural University", "Mechanical transplanting of rice", UNDATED)
RDA_KOREA = Source(
    "Rural Development Administration, Korea",
    "[rice seed and tray soil guidance]",
    "2009 to 2014",
)
JCS_73_389 = Source(
    "Japanese Journal of Crop Science 73(4):389-395 (Takahashi et al.)",
    "[tray soil depth and cover, Gunma trial]",
    "2004",
)
JCS_88_27 = Source(
    "Japanese Journal of Crop Science 88(1):27-40 (Sawamoto et al.)",
    "[high-density seedling boxes]",
    "2019",
)
JCS_90_382 = Source(
    "Japanese Journal of Crop Science 90(4):382-392",
    "[sowing depth in dry direct seeding]",
    "2021",
)
SPROUT_JAPAN = Source("Engineer314, Japan", "[rice planting notes]", UNDATED)
SPROUT_CHINA = Source("gowu797, China", "[tray nursery notes]", UNDATED)
UREA_SDS = Source("J.R. Simplot Company", "[urea 46-0-0 safety data sheet]", UNDATED)
PUNJAB_PADDY_2015 = Source(
    "Singh et al., IJSART 1(4)", "[bulk density of paddy PR-121]", "2015"
)
USDA_TEST_WEIGHT = Source("USDA, as quoted by Wikipedia", "Test weight: rough rice", UNDATED)
STRECK_2008 = Source(
    "Agronomy Journal 100:490 (Streck et al.)", "[leaf appearance of rice cultivars]", "2008"
)
ELLIS_1993 = Source(
    "Ellis et al. (authors and year from memory)",
    "Rates of leaf appearance and panicle development in rice",
    "1993",
)
SAHA_2018 = Source("IJEP 5(2), Saha et al.", "[age of rice seedlings and yield]", "2018")
MISSOURI = Source("University of Missouri Extension", "[lightning safety]", UNDATED)
CFR_201_55 = Source(
    "United States Federal Seed Act Regulations", "7 CFR 201.55(a), retests", UNDATED
)
TORUN = Source(
    "Nicolaus Copernicus University", "[density of salt solutions, after WNT 1974]", UNDATED
)
KERALA_KVK = Source(
    "ACRI (Chithra, ICAR-KVK Mitraniketan)", "[hand and machine transplanting]", UNDATED
)
IJNES_64 = Source(
    "IJNES, article 64", "[tray density and transplanting of hybrid rice]", UNDATED
)
KUBOTA = Source("Kubota, Japan", "[soaking seed, school page]", UNDATED)
JCS_90_269 = Source(
    "Japanese Journal of Crop Science 90:269 (Itayagoshi et al.)",
    "[soaking temperature and germination]",
    "2021",
)
PHILRICE_BULLETIN = Source("OPAPA-PhilRice", "Use 40 kg certified seeds per hectare", "2010")
JAFFNA = Source(
    "University of Jaffna repository, item 8215", "[age of seedlings for machines]", UNDATED
)
BIOLINE_11041 = Source(
    "Bioline International, abstract cj11041",
    "[20-day and 40-day seedlings, dense and sparse]",
    UNDATED,
)
NARC_2016 = Source(
    "GAB 7(1), Kushwaha et al., Nepal Agricultural Research Council",
    "[delayed transplanting with aged seedlings]",
    "2016",
)
NARJ_2002 = Source(
    "Nepal Agriculture Research Journal 4&5:14-17, Shah and Yadav",
    "Response of Rice Varieties to Age of Seedlings and Transplanting Dates (abstract)",
    "2001/2002",
)
NARC_METHODS = Source(
    "Khan, Regmi and Bista, library of the Nepal Agricultural Research Council",
    "Testing and evaluation of different methods of rice transplanting (abstract)",
    UNDATED,
)
PERTANIKA_2000 = Source(
    "Pertanika Journal of Science and Technology 8(2):205-215 (Islam and Ahmad)",
    "Effects of seedling raising methods on a manually operated paddy transplanter",
    "2000",
)
ASABE_2017 = Source(
    "ASABE, paper 1700770 (Ashik-E-Rabbani et al.)", "[labour for filling trays]", "2017"
)
NONGSARO_281 = Source(
    "Rural Development Administration, Korea, video 281",
    "[labour of seedlings in beds and on racks]",
    "2005",
)
ECHO_164 = Source(
    "ECHO Community, citing Kim et al. 2022",
    "How to use water, an egg and salt to assess paddy rice seeds",
    UNDATED,
)
ICAR_NEH = Source("ICAR Research Complex for North-East Hills", "Rice seed production", UNDATED)
TAMAGAWA = Source("Tamagawa University, Japan", "[rice seedlings]", UNDATED)
UPM_2015 = Source(
    "RJASET 10(11):1258-1265 (Bashar et al., Universiti Putra Malaysia)",
    "[seed selection and soil mixes for mats]",
    "2015",
)
YAMAGATA_2022 = Source("Yamagata prefecture, Japan", "[soaking rice seed]", "2022")
BRRI_104 = Source("AJAAR (abstract)", "[BRRI dhan104]", UNDATED)
BRRI_NEWS = Source(
    "The Business Post and FarmingBD", "[two new BRRI varieties, dhan105 and dhan106]", "2023"
)
TEXAS_2007 = Source("Texas A&M University", "Texas Rice Production Guidelines, p. 23", "2007")
PIDS_2005 = Source(
    "Philippine Institute for Development Studies", "Discussion Paper 2005-14", "2005"
)
UREA_TRADE = Source("tradeinfact.com", "[urea, granular: bulk density]", UNDATED)
SPOONS = Source("sovetysad.ru", "[grams of urea in a spoon]", UNDATED)
LSU_MEASURES = Source(
    "Louisiana State University AgCenter",
    "Tons to teaspoons: fertilizer for small areas",
    UNDATED,
)
EHINGA = Source("ehinga.org, Rwanda", "Planting of rice", UNDATED)
ZAULIMI = Source("Zaulimi, Malawi", "Rice: nursery preparation and sowing; planting", UNDATED)
ICAR_PUNJAB = Source("Rice portal of ICAR-DRR", "Mat nursery in Punjab", UNDATED)
RICE_GROWTH = Source("iomcworld.com", "Rice growth", UNDATED)
