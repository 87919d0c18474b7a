"""What the officers' pages show and do."""
