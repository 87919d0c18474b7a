"""The one place where parts are joined."""
