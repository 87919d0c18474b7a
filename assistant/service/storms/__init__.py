"""Rain warnings, drafts and broadcasts: whom they reach, and what became of them."""
