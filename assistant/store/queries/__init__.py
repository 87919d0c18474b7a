"""What can be asked of the store, one class for each subject; `Work` holds one of each."""
