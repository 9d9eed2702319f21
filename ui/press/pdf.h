#pragma once

#include <filesystem>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "core/film/paper.h"
#include "core/geodesy/carried_crs.h"
#include "core/units/time.h"
#include "ui/press/painter.h"

namespace crosstick::press {

/// A part of a page that shows ground: its place on the page and its corners on the datum of a sheet's grid.
struct GroundOnPage {
    drawing::Box onPage;          ///< page millimetres
    geodesy::CarriedCrs carried;  ///< the grid, with the corners south-west, north-west, north-east, south-east
    std::string name;             ///< what the ground is called: the sheet's name
};

struct PdfPage {
    film::Paper paper;
    drawing::Drawing drawing;  ///< page millimetres from the upper left corner
    std::string layer;         ///< name of the layer the page's marks are; empty: no layer
    std::optional<GroundOnPage> ground;
};

/// What stands in the file beside its pages.
struct PdfFacts {
    std::string title;
    std::string author;
    std::string subject;  ///< the marking
    Instant made;         ///< both dates of the file
};

/// Pages as PDF: vectors only, text as text in the embedded face, page box exact to a millionth of a point, one layer
/// for each page that names one, ground registered for readers that know how, "print at true size" asked for. The same
/// arguments give the same bytes.
/// Needs a QGuiApplication. Errors: press/no-pages, press/pdf-refused with "why".
[[nodiscard]] Result<std::string> pdfBytes(const std::vector<PdfPage>& pages, const PdfFacts& facts, const Faces& faces,
                                           const Inks& inks);

/// The same page by page, for whoever has them one after the other.
class PdfPainting {
  public:
    PdfPainting(const Faces& faces, const Inks& inks);  ///< both outlive it
    ~PdfPainting();
    PdfPainting(const PdfPainting&) = delete;
    PdfPainting& operator=(const PdfPainting&) = delete;

    void add(const PdfPage& page);
    /// Errors: as those of pdfBytes.
    [[nodiscard]] Result<std::string> finished(const PdfFacts& facts) &&;

  private:
    struct Desk;
    std::unique_ptr<Desk> desk_;
};

/// Writes beside the file and moves it into its place, so that a file is the old or the new one.
/// Errors: press/folder-missing with "folder", press/cannot-write with "file" and "why".
[[nodiscard]] Result<void> writeWhole(const std::filesystem::path& file, const std::string& bytes);

}  // namespace crosstick::press
