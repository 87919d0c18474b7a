"""The web side: what the gateway calls. Request -> one service call -> response."""
