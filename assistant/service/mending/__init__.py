"""What was entered or sent by mistake is put right; nothing of the trail changes."""
