"""One life of a nursery: what there is to do, what happened, and what each of them changes."""
