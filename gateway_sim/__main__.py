"""`python -m gateway_sim`: see `console`."""

from gateway_sim.console import main

main(prog_name="gateway_sim")
