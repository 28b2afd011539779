"""Pages, drawings and readers that fail, and doubtful readings (recognition, desktop/pipeline.py)."""

from __future__ import annotations

from desktop.language import tr_later

__all__ = ["TEMPLATES"]

TEMPLATES: tuple[str, ...] = (
    # Doubtful readings
    tr_later("Check the reading first: with another reading of it the line follows."),
    tr_later("Check the reading first: with another reading of line {number} the line follows."),
    tr_later("Check the reading first: line {number} was hard to read."),
    tr_later("This line could not be read. Type what it says."),
    # Pictures and PDF
    tr_later("There is no file {name}. Check the name and the folder, then open it again."),
    tr_later("{name} is an empty file. Copy it again from the camera or phone."),
    tr_later("{name} is an AVIF photo, which is not supported. Export it as JPEG and open that."),
    tr_later("{name} is a GIF, which is not supported. Export it as PNG or JPEG and open that."),
    tr_later(
        "{name} is a HEIC photo, which needs the package pillow-heif. Install firstslip[heic], or export the "
        "photo as JPEG and open that."
    ),
    tr_later("{name} is a damaged HEIC file. Copy it again from the phone, or export it as JPEG."),
    tr_later("{name} is not a picture that can be opened. Choose a JPEG, PNG, TIFF, WebP, BMP, HEIC or PDF file."),
    tr_later("{name} holds text, not a picture. Choose a JPEG, PNG, TIFF, WebP, BMP, HEIC or PDF file."),
    tr_later("{name} is a folder. Choose one or more JPEG, PNG, TIFF, WebP, BMP, HEIC or PDF files inside it."),
    tr_later("{name} is locked with a password. Save a copy without the password and open that."),
    tr_later("{name} may not be read. Ask for the right to read it, or choose another file."),
    tr_later("{name} could not be read from the disk. Copy it again and open the copy."),
    tr_later("{name} is cut off: the end of the {other} file is missing. Copy it again from the camera or phone."),
    tr_later("{name} is a damaged {other} file. Copy it again from the camera or scanner, or save it anew as JPEG."),
    tr_later("{name} is {a} GiB large; the limit is {b} GiB. Split it into smaller files and open those."),
    tr_later("{name} has {number} pages; the limit is {count}. Split it and open the parts."),
    tr_later("{name} is {number} x {count} pixels, too small to hold writing. Choose the full-size photo."),
    tr_later("{name} has {a} megapixels; the limit is {b}. Save it at a smaller size and open that."),
    tr_later("{name} has no pages. Export it again and open the new file."),
    tr_later("Page {number} of {name} is damaged. Export the PDF again, or open the page as a picture."),
    tr_later(
        "No writing was found on this page. Check that the photo shows the written side, sharp and near "
        "enough to read, and take it again."
    ),
    # Lines corrected by hand
    tr_later("One line alone cannot be merged. Choose the lines that belong together."),
    tr_later("This cut leaves one side without writing. Draw it between the two parts."),
    tr_later("There is no pen stroke within this outline. Draw it around the writing."),
    tr_later("This outline is too small to hold a line. Draw it around the whole line."),
    tr_later("A cut needs two ends apart from each other. Draw it across the line."),
    tr_later("This picture is too small to hold a line. Choose the full-size photo."),
    tr_later("This outline lies beside the page. Draw it around writing on the page."),
    # Pen drawings
    tr_later("{name} is larger than {number} MB. Split the drawing into smaller ones."),
    tr_later("{name} cannot be read. Check the name and the folder, then open it again."),
    tr_later("{name} is XML but not InkML. Save the drawing again as InkML and open the new file."),
    tr_later("{name} holds no pen strokes. Draw the working first, then save it as InkML."),
    tr_later("{name} cannot be saved there. Choose another folder or free some space."),
    tr_later("{name} is nested too deep for InkML. Save the drawing again as InkML and open the new file."),
    tr_later(
        "{name} declares XML entities, which are not read for safety. Save the drawing again as InkML and "
        "open the new file."
    ),
    tr_later("{name} is not well-formed XML (line {number}). Save the drawing again as InkML and open the new file."),
    tr_later(
        "{name} is in a character encoding that cannot be read. Save the drawing again as InkML and open the new file."
    ),
    tr_later("The traces of {name} have no X and Y. Save the drawing again as InkML and open the new file."),
    tr_later("A trace of {name} lies beyond any page. Save the drawing again as InkML and open the new file."),
    tr_later("{name} has more than {number} points. Split the drawing into smaller ones."),
    tr_later(
        "Trace {number} of {name} does not fit its trace format. Save the drawing again as InkML and open the new file."
    ),
    # The reader
    tr_later("The reader's weights cannot be loaded. Install Firstslip again."),
    tr_later("The reader's weights do not fit their vocabulary. Install Firstslip again."),
    tr_later("The list of the reader's weights, SHA256SUMS, cannot be read. Install Firstslip again."),
    tr_later("The reader's weights {name} are missing. Install Firstslip again."),
    tr_later("The reader's weights {name} are damaged: their SHA-256 is not the listed one. Install Firstslip again."),
    # Typesetting: desktop/maths.py
    tr_later("There is nothing to show yet."),
    tr_later("This line is too long to show. Split it into lines."),
    tr_later("This line is nested too deeply to show."),
    tr_later("This LaTeX is not complete yet."),
    # Pages of the desk's own: desktop/typed_page.py, pen_page.py, pen_commands.py
    tr_later("Typed working"),
    tr_later("Typed working {number}"),
    tr_later("Pen page"),
    tr_later("Pen page {number}"),
    tr_later("There is nothing written with the pen on this page. Take a page for the pen (Ctrl+Shift+N) first."),
)
