"""Who published what the emergency texts say: one row a publication, cited by the sentences.

All were read in archived copies or as the part of a page that was kept, none in print. The big
guidelines on snakebite, drowning and poisoning (WHO, IFRC) could not be read; whoever has them
should put them in the place of grades B and C.
"""

from dataclasses import dataclass
from enum import StrEnum

from assistant.agronomy.sourced.sources import UNDATED


class Grade(StrEnum):
    """How good a publication is for what it is cited for."""

    OFFICIAL = "A"  # official or peer-reviewed
    PUBLIC = "B"  # public body, university, Red Cross, professional charity
    REPEATED = "C"  # newspaper, company, or a page that repeats an official text


@dataclass(frozen=True)
class AidSource:
    """A publication on first aid that a person can look up.

    key:     how the sentences cite it
    title:   with the page, section or paragraph
    address: where it was read
    note:    what to know of the copy
    """

    key: str
    grade: Grade
    publisher: str
    title: str
    year: str
    address: str
    note: str = ""


A, B, C = Grade.OFFICIAL, Grade.PUBLIC, Grade.REPEATED
_EPA = "https://19january2017snapshot.epa.gov"

GHS = AidSource(
    "GHS-1",
    A,
    "United Nations",
    "Globally Harmonized System, Annex 3, precautionary statements P101, P301+P310, P302+P352, "
    "P303+P361+P353, P304+P340, P305+P351+P338, as in Regulation (EC) 1272/2008, Annex IV",
    UNDATED,
    "https://github.com/cgnieder/ghsystem (language/ghsystem_english.def)",
    "official text, read in a copy",
)
GHS_NOW = AidSource(
    "GHS-10",
    A,
    "United Nations",
    "Globally Harmonized System, later editions, P301+P316 in the place of P301+P310",
    "Rev. 9, 2021, from memory",
    "a list of the statements in public software, whose address was not kept",
    "official text, read in a copy",
)
EPA_CASE = AidSource(
    "EPA-1",
    A,
    "US Environmental Protection Agency",
    "In case of pesticide emergency",
    "copy of 2017",
    f"{_EPA}/rodenticides/case-pesticide-emergency_.html",
)
EPA_FIRST_AID = AidSource(
    "EPA-2",
    A,
    "US Environmental Protection Agency",
    "First aid in case of pesticide exposure, general guidelines, lines on eye and skin only",
    "copy of 2017",
    f"{_EPA}/pesticide-incidents/first-aid-case-pesticide-exposure_.html",
)
EPA_LABEL = AidSource(
    "EPA-3",
    A,
    "US Environmental Protection Agency",
    "Read the label first! Protect your household",
    UNDATED,
    "https://nepis.epa.gov/Exe/ZyPURL.cgi?Dockey=P100O14D.txt",
)
HESPERIAN_SPILL = AidSource(
    "HESP-1",
    B,
    "Hesperian Health Guides",
    "A community guide to environmental health, p. 256",
    "2012",
    "https://iiab.me/modules/en-hesperian_health/en_cgeh_2012_full/page272.html",
)
HESPERIAN_BREATH = AidSource(
    "HESP-2",
    B,
    "Hesperian Health Guides",
    "A community guide to environmental health, p. 259",
    "2012",
    "https://iiab.me/modules/en-hesperian_health/en_cgeh_2012_full/page275.html",
)
PENN_POISONING = AidSource(
    "PSU-1",
    B,
    "Pennsylvania State University Extension",
    "Responding to pesticide poisoning symptoms",
    UNDATED,
    "https://extension.psu.edu/responding-to-pesticide-poisoning-symptoms",
)
CORNELL = AidSource(
    "CORN-1",
    B,
    "Cornell University",
    "NRCCA study guide, competency area 8, PO 53",
    UNDATED,
    "https://nrcca.cals.cornell.edu/pest/CA8/CA0853.php",
)
NIOSH_SNAKES = AidSource(
    "NIOSH-1",
    A,
    "US CDC, National Institute for Occupational Safety and Health",
    "Venomous snakes: symptoms and first aid",
    "2016",
    "http://medbox.iiab.me/modules/en-cdc/www.cdc.gov/niosh/topics/snakes/symptoms.html",
)
NHS_SNAKES = AidSource(
    "NHS-1",
    A,
    "UK National Health Service",
    "Treating snake bites",
    UNDATED,
    "http://www.nhs.uk/conditions/bites-snake/Pages/Treatment.aspx",
)
WHO_SNAKES_CDAC = AidSource(
    "WHO-1",
    C,
    "CDAC Network",
    "Message library: snakes, under its heading (WHO guidance)",
    UNDATED,
    "http://www.cdacnetwork.org./snakes",
    "repeats WHO, which was not itself readable",
)
WHO_SNAKES_PAGE = AidSource(
    "WHO-2",
    C,
    "a personal page, gmswamy.com",
    "WHO's first aid instructions for snake bite",
    "2019",
    "https://gmswamy.com/2019/02/whos-first-aid-instructions-for-snake.html",
    "repeats WHO, which was not itself readable",
)
FEMA = AidSource(
    "FEMA-1",
    A,
    "US Federal Emergency Management Agency",
    "If someone is hit by lightning",
    "copy of 2009",
    "https://webarchive.library.unt.edu/eot2008/20090114180806/"
    "http://www.fema.gov/kids/thhit.htm",
)
WEATHER_LIGHTNING = AidSource(
    "NWS-1",
    C,
    "Sun Sentinel, by the US National Weather Service",
    "Lightning strikes: how to stay safe",
    "2009",
    "http://articles.sun-sentinel.com/2009-05-17/features/"
    "0905140490_1_lightning-strikes-lightning-victim-lightning-strike-victim",
)
VIRGINIA_TECH = AidSource(
    "VT-1",
    B,
    "Virginia Tech Emergency Management",
    "Lightning: after",
    UNDATED,
    "https://emergency.vt.edu/ready/guides/lightning/lightning-after.html",
)
NDMA = AidSource(
    "NDMA-1",
    C,
    "Indian Express, quoting the National Disaster Management Authority of India",
    "[dos and don'ts in flood and lightning]",
    "2021",
    "https://indianexpress.com/article/lifestyle/life-style/"
    "chennai-rains-waterlogging-flood-lightning-ndma-warning-dos-donts-tips-safeguard-7617786/",
)
LIFE_SAVING = AidSource(
    "RLSS-1",
    B,
    "Royal Life Saving Society UK",
    "How to rescue someone from drowning, steps 2 to 5",
    UNDATED,
    "https://www.rlss.org.uk/how-to-rescue-someone-from-drowning",
)
LONDON_FIRE = AidSource(
    "LFB-1",
    A,
    "London Fire Brigade",
    "Survival and rescue (water safety)",
    UNDATED,
    "https://www.london-fire.gov.uk/safety/water-safety/survival-and-rescue",
)
DEVON_POLICE = AidSource(
    "DCP-1",
    A,
    "Devon and Cornwall Police",
    "Falling in the water",
    UNDATED,
    "https://www.devon-cornwall.police.uk/advice/coastsafe/falling-in-the-water/",
)
WEATHER_FLOOD = AidSource(
    "NWS-2",
    A,
    "US National Weather Service, Nashville",
    "Flooding",
    UNDATED,
    "https://weather.gov/ohx/flooding",
)
NEAR_DROWNING = AidSource(
    "ADAM-1",
    C,
    "A.D.A.M. Medical Encyclopedia on HealthCentral",
    "Near drowning: first aid",
    UNDATED,
    "http://www.healthcentral.com/encyclopedia/adam/near-drowning-4006350/treatment/",
)
AFTER_RESCUE = AidSource(
    "ERR-1",
    A,
    "European Respiratory Review",
    "Who needs further medical help after rescue from the water? (table)",
    UNDATED,
    "https://err.ersjournals.com/highwire/markup/14007/expansion",
    "it lets some go after watching; the text sends all, the safer side",
)
ARS_SHOCK = AidSource(
    "ARS-1",
    A,
    "US Department of Agriculture, Agricultural Research Service",
    "Electrical safety training, page 5",
    UNDATED,
    "https://ars.usda.gov/northeast-area/docs/"
    "safety-health-and-environmental-training/electrical-safety/page-5",
)
DOWNED_LINES = AidSource(
    "ESFI-1",
    B,
    "Electrical Safety Foundation International",
    "Downed power lines",
    UNDATED,
    "https://www.esfi.org/downed-power-lines-video-short/",
)
KERALA_LINE = AidSource(
    "KSEB-1",
    C,
    "presslivetv, in Malayalam, quoting the Kerala State Electricity Board",
    "[fallen lines: let nobody near until the Board's staff have come]",
    UNDATED,
    "https://presslivetv.com/?p=10506",
    "our reading of the Malayalam, to be checked by a reader of it",
)
KERALA_SHOCK = AidSource(
    "KSEB-2",
    B,
    "Kerala State Electricity Board",
    "Safety: first aid information for electric shock",
    UNDATED,
    "http://hris.kseb.in/SafetyApp/firstaid",
)
DUQUESNE = AidSource(
    "DLC-1",
    C,
    "Duquesne Light, an electricity company (name from the address)",
    "Coworker contact",
    UNDATED,
    "https://duquesne.e-smartworkers.com/69140_safe_practices/69142_look_up/coworker_contact.html",
)
RED_CROSS_BLEEDING = AidSource(
    "ARC-1",
    B,
    "American Red Cross",
    "Bleeding, life-threatening external",
    UNDATED,
    "https://www.redcross.org/take-a-class/resources/learn-first-aid/"
    "bleeding-life-threatening-external",
    "what it says for trained people is left out",
)
NZ_BLEEDING = AidSource(
    "HINZ-1",
    B,
    "HealthInfo, New Zealand",
    "Heavy bleeding",
    UNDATED,
    "https://www.healthinfo.org.nz/heavy-bleeding.htm",
)
ST_JOHN_NZ = AidSource(
    "SJNZ-1",
    B,
    "St John New Zealand",
    "First aid library: bleeding",
    UNDATED,
    "https://www.stjohn.org.nz/First-Aid/First-Aid-Library/Bleeding",
)
ST_JOHN_UK = AidSource(
    "SJA-1",
    C,
    "The News, Portsmouth, with St John Ambulance",
    "First aid: how to stem severe bleeding",
    "2017",
    "http://www.portsmouth.co.uk/news/health/first-aid-how-to-stem-severe-bleeging-1-8155479",
)
SUFFOLK_FIRE = AidSource(
    "SFRS-1",
    A,
    "Suffolk Fire and Rescue Service",
    "In the event of fire in your house",
    UNDATED,
    "https://www.suffolk.gov.uk/suffolk-fire-and-rescue-service/fire-safety-in-the-home/"
    "in-the-event-of-fire-in-your-house/",
)
SHARECARE = AidSource(
    "SHARE-1",
    C,
    "Sharecare",
    "What is smoke inhalation?",
    UNDATED,
    "http://www.sharecare.com/health/lung-disease-respiratory-system/what-is-smoke-inhalation",
)
DEFRA = AidSource(
    "DEFRA-1",
    A,
    "UK Department for Environment, Food and Rural Affairs",
    "Emergencies on livestock farms (PB1147), paragraphs 30 to 32",
    "copy of 2011",
    "https://adlib.everysite.co.uk/adlib/defra/content_bl.aspx?id=000IL3890W.18113FND2JO1BT",
)
PET_POISON = AidSource(
    "NPIC-1",
    B,
    "National Pesticide Information Center (Oregon State University)",
    "Pet poisoning",
    UNDATED,
    "http://npic.orst.edu/health/petpoison.html",
)
PENN_ANIMALS = AidSource(
    "PSU-2",
    B,
    "Pennsylvania State University Extension",
    "Large animal first aid",
    "2005",
    "http://extension.psu.edu/animals/dairy/news/2005/large-animal-first-aid",
)
RED_CROSS_SCENE = AidSource(
    "ARC-2",
    C,
    "East Texas Medical Center, content by the American Red Cross",
    "What to do in an emergency",
    "2014",
    "http://www.etmc.org/emergency/",
)
FLASH = AidSource(
    "FLASH-1",
    B,
    "FLASH (Federal Alliance for Safe Homes, from memory)",
    "Lightning",
    UNDATED,
    "https://www.flash.org/peril_inside.php?id=131",
)
NHS_SUICIDE = AidSource(
    "NHS-2",
    C,
    "UK National Health Service, in a licensed copy",
    "Suicide",
    "reviewed 2016",
    "https://www.zana.com/c/suicide.1440",
)
NIMH = AidSource(
    "NIMH-1",
    A,
    "US National Institute of Mental Health",
    "Suicide prevention",
    "2024",
    "https://www.nimh.nih.gov/health/topics/suicide-prevention",
)
BROMLEY = AidSource(
    "BROM-1",
    B,
    "Bromley Healthcare (UK community health provider)",
    "World suicide prevention day",
    UNDATED,
    "https://www.bromleyhealthcare.org.uk/latest/blog/world-suicide-prevention-day/",
)
WHO_SUICIDE = AidSource(
    "WHO-3",
    A,
    "World Health Organization",
    "Questions and answers: suicide",
    "2024",
    "https://test-cms.who.int/news-room/questions-and-answers/item/suicide",
    "read on a test host of WHO",
)
WHO_SUICIDE_NEWS = AidSource(
    "WHO-4",
    C,
    "Hindustan Times, reporting WHO",
    "[world suicide prevention day: what we can do]",
    "2022",
    "https://www.hindustantimes.com/india-news/world-suicide-prevention-day-here-s-what-we-can-"
    "do-to-save-a-life-101662807997433-amp.html",
)
