"""What the process that all others are forked from has read before: modules and word lists.

Loaded there only; a fork then begins to work in milliseconds.
"""

import tests.chaos.parts as parts
import tests.chaos.relay as relay
from assistant.wiring.catalogues import open_catalogue
from assistant.wiring.dangers import open_dangers
from assistant.wiring.hearing import open_ears
from assistant.wiring.lexicons import open_lexicons
from assistant.wiring.practices import open_practices
from assistant.wiring.tasks import open_tasks

open_dangers()
open_tasks()
open_lexicons()
open_ears()
open_practices(None)
open_catalogue("en")

run, pass_on = parts.run, relay.pass_on
