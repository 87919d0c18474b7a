"""What an operator's account says of its SMPP."""

from dataclasses import dataclass

BINDS = ("transceiver", "two")
LONG = ("udh", "sar", "payload")
ALPHABETS = ("gsm", "latin1", "ascii")
VALIDITIES = ("absolute", "relative", "none")
IDS = ("same", "hex then decimal", "decimal then hex")


@dataclass(frozen=True)
class SmppTerms:
    """An SMPP account.

    bind:      one transceiver, or a transmitter and a receiver (two)
    long:      how a long text goes: by a header in each segment, by sar_ fields, or whole
    alphabet:  what data_coding 0 is at this operator
    validity:  how the end of a text's time is told
    ids:       how receipts spell the id that the hand-over told
    window:    texts on their way without an answer
    rest_s:    pause after "too fast" or "queue full"
    reference: a text bears a mark of ours (user_message_reference), which its receipts may tell
    doubt_s:   how long a text whose answer was lost waits for a receipt, before it goes again
    ussd_code: where set, USSD sessions come by this line too
    """

    host: str
    system_id: str
    password: str
    sender: str
    port: int = 2775
    system_type: str = ""
    service_type: str = ""
    bind: str = "transceiver"
    tls: bool = False
    ca_file: str = ""
    sender_ton: int = 1
    sender_npi: int = 1
    long: str = "udh"
    alphabet: str = "gsm"
    validity: str = "absolute"
    ids: str = "same"
    window: int = 10
    enquire_s: float = 30.0
    answer_s: float = 10.0
    rest_s: float = 5.0
    reference: bool = True
    doubt_s: float = 20.0
    ussd_code: str = ""
    country: str = ""

    def __post_init__(self) -> None:
        for name, value, known in (
            ("bind", self.bind, BINDS),
            ("long", self.long, LONG),
            ("alphabet", self.alphabet, ALPHABETS),
            ("validity", self.validity, VALIDITIES),
            ("ids", self.ids, IDS),
        ):
            if value not in known:
                raise ValueError(f"{name} is {value!r}: set one of {', '.join(known)}")
        for name, value, most in (
            ("system_id", self.system_id, 15),
            ("password", self.password, 8),
            ("system_type", self.system_type, 12),
            ("sender", self.sender, 20),
        ):
            if len(value) > most or not value.isascii():
                raise ValueError(f"{name}: set up to {most} ASCII characters")
        if not 1 <= self.window <= 1000:
            raise ValueError("window: set 1 to 1000")
