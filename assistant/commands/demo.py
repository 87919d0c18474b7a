"""An officer to try the page with: only beside the simulated operator, only where none is."""

from assistant.service.codes import new_text_code
from assistant.service.desk.accounts import give_one_time_password, has_officers
from assistant.service.enrol import add_officer
from assistant.service.house import House
from assistant.wiring.house import hash_code
from assistant.worker import wall_clock

# Invented; the number is from the range that Ofcom sets aside for drama.
DEMO_NAME, DEMO_PHONE = "Neema", "+447700900001"


def demo_officer(house: House) -> str:
    """Makes the demo's officer where there is no officer; how to sign in."""
    if has_officers(house):
        return f"Password lost? nursery officer password --phone {DEMO_PHONE}"
    code = new_text_code()
    add_officer(
        house,
        phone=DEMO_PHONE,
        name=DEMO_NAME,
        villages=(),
        language=house.languages[0],
        is_lead=True,
        code=code,
        hash_code=hash_code,
        now=wall_clock(),
    )
    _, password = give_one_time_password(house, DEMO_PHONE, wall_clock())
    return (
        f"There sign in as {DEMO_NAME}: {DEMO_PHONE}, one-time password {password}\n"
        f"Her code for texts such as RAIN: {code}   (both are shown only this once)"
    )
