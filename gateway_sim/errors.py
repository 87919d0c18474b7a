"""What can go wrong at the simulated operator; every text says what to do next."""


class OperatorError(Exception):
    """Anything this package refuses or fails at."""


class StartError(OperatorError):
    """The operator could not be started."""


class NumberError(OperatorError):
    """A phone number outside the ranges set aside for fiction."""


class PhoneOffError(OperatorError):
    """A phone that is switched off was asked to do something."""


class SessionError(OperatorError):
    """A USSD step that does not fit: no session to answer, or one is open already."""


class TextError(OperatorError):
    """A text that no network could carry."""


class HandlerError(OperatorError):
    """A handler that could not have meant what it says."""
