"""Why a photo or film does not open, in the words of those who open them.

The words go through other processes and through files as plain text; by this list a
window in another language knows them again. A test holds it to what is raised.
"""

TROUBLES = (
    "the photo is broken or breaks off",
    "the file is larger than {n} MB",
    "the file is larger than {n} GB",
    "the file is empty",
    "the file is not a JPEG, PNG, WebP or HEIC photo",
    "the photo has {width} × {height} pixels, more than can be opened",
    "looking at the file took longer than {n} s",
    "the file made its reader fail",
    "the reader of photos and videos did not start",
    "the video does not open or breaks off",
    "the file is not an MP4, MOV, 3GP, WebM or AVI video",
    "the file holds no picture track",
    "the video's pictures are of a kind that cannot be shown here",
    "the picture is too large",
    "the video's frames carry no times",
    "decoding took longer than {n} s",
    "the video shows no moving picture",
)
