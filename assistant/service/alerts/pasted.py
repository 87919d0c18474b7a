"""An official message that a lead brings by hand, where the service's own address is out of
reach."""

from dataclasses import replace
from datetime import datetime

from assistant.service.alerts.taking import take_alert
from assistant.service.audit import TrailAct, note
from assistant.service.house import House
from assistant.service.sight import Sight
from assistant.store import KeptAlert


def paste_alert(house: House, sight: Sight, raw: str, now: datetime) -> KeptAlert | bool | None:
    """Takes a message in. It warns nobody by itself, whatever is set of messages that come from
    the service: nobody knows on what way this one came. False for one that was taken before,
    None for anybody but a lead."""
    if not sight.officer.is_lead:
        return None
    careful = replace(house, alerts_go_out=False)
    kept = take_alert(careful, raw.strip().encode(), sight.officer.name, now)
    if kept is None:
        return False
    with house.store.work() as work:
        note(work, sight.officer.id, TrailAct.ALERT_PASTED, now, detail=kept.identifier or "")
    return kept
