"""How a number carries its source: constants, publications, tables, disagreements."""
