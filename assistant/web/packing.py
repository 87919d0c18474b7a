"""Pages leave compressed, since an officer's line may be slow.

What is compressed together with words that somebody else chose can be guessed from its length
(the BREACH attack): a site elsewhere would have an officer's browser ask for a page many times
with guesses in the address. So an answer to a request that another site began leaves as it is.
Browsers say so in `Sec-Fetch-Site` (W3C, Fetch Metadata Request Headers). One that does not say
sends no cookie with such requests (`SameSite=Lax`), but when it opens a whole window; and the
token of the forms is signed anew each second, so that what is guessed over many answers fits
none. The decision stands in `assistant/decisions`.
"""

from flask import Flask, Response, request
from flask_compress import Compress

from assistant.web.guard import GATEWAY

# Other files (workbooks) are compressed already.
KINDS = ("text/html", "text/css", "text/javascript", "text/csv", "text/calendar", "text/xml")
OURS = ("same-origin", "none")  # begun by a page of ours, or by the person


def pack(app: Flask) -> None:
    """Compresses the answers of an application, but for those to the gateway."""
    app.config.update(
        COMPRESS_MIMETYPES=list(KINDS),
        COMPRESS_ALGORITHM=["br", "gzip"],  # what browsers of the last ten years know
        COMPRESS_STREAMS=False,  # what is streamed would leave its file open
        COMPRESS_REGISTER=False,  # it is asked below, where it is safe
    )
    compress = Compress(app)

    @app.after_request
    def packed(response: Response) -> Response:
        if request.blueprint == GATEWAY or not _is_ours():
            return response
        if request.endpoint == "static" and response.is_streamed:
            response.direct_passthrough = False
            response.make_sequence()  # two small files, kept by browsers for ever
        return compress.after_request(response)


def _is_ours() -> bool:
    """Whether no other site began this request; files of the pages hold no secret."""
    begun = request.headers.get("Sec-Fetch-Site", OURS[0])
    return request.endpoint == "static" or begun in OURS
