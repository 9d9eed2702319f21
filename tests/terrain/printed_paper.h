#pragma once

#include <cstdint>
#include <random>
#include <string>
#include <vector>

#include "core/terrain/picture.h"
#include "core/terrain/vein.h"

namespace crosstick::testing {

/// Millimetres of paper, x to the right, y down.
struct PaperPoint {
    double x = 0, y = 0;
};
using PaperLine = std::vector<PaperPoint>;

/// Pixels at hand as a picture.
class HeldPixels final : public terrain::Picture {
  public:
    explicit HeldPixels(sheets::Pixels pixels) : pixels_(std::move(pixels)) {}
    [[nodiscard]] int columns() const override { return pixels_.columns; }
    [[nodiscard]] int rows() const override { return pixels_.rows; }
    /// Averages whole pixels when made smaller.
    [[nodiscard]] Result<sheets::Pixels> read(sheets::PixelWindow window, int columns, int rows) const override;
    [[nodiscard]] const sheets::Pixels& pixels() const { return pixels_; }

  private:
    sheets::Pixels pixels_;
};

/// Dashes in millimetres; none: unbroken.
struct Broken {
    double on = 0, off = 0;
};

/// Paper to print on, without any other program's help: lines with soft edges, in the order in which they are laid.
class PrintedPaper {
  public:
    PrintedPaper(double widthMm, double heightMm, double pixelsPerMm, terrain::Colour ground);
    void stroke(const PaperLine& line, terrain::Colour ink, double widthMm, Broken broken = {});
    /// A width that grows from the first point to the last.
    void strokeGrowing(const PaperLine& line, terrain::Colour ink, double fromMm, double toMm);
    /// Everything inside a round patch with a wavy edge.
    void blot(PaperPoint middle, double radiusMm, terrain::Colour tint);
    /// Letters of straight strokes, so high, the lower left corner at a place.
    void letters(const std::string& word, PaperPoint at, double heightMm, terrain::Colour ink);
    [[nodiscard]] sheets::Pixels pixels() const;
    [[nodiscard]] double pixelsPerMm() const { return pixelsPerMm_; }

  private:
    int columns_, rows_;
    double pixelsPerMm_;
    std::vector<terrain::Colour> colours_;
    std::vector<float> cover_;

    void coverPiece(PaperPoint a, PaperPoint b, double widthMm);
    void layCover(terrain::Colour ink);
};

/// As a scanner and a JPEG file leave it: a little soft, with grain, in squares.
[[nodiscard]] sheets::Pixels scanned(const sheets::Pixels& pixels, int jpegQuality, double grain, std::uint32_t seed);

/// A line of a made sheet, known exactly.
struct KnownLine {
    std::string style;  ///< "stream"
    PaperLine line;
};
/// A sheet with roads, tracks, paths, streams, a shore and contours that cross each other, with names, grid and woods.
struct MadeSheet {
    sheets::Pixels pixels;
    double pixelsPerMm = 0;
    std::vector<KnownLine> lines;
};
struct SheetWish {
    std::uint32_t seed = 1;
    double sideMm = 170;
    double pixelsPerMm = 300 / 25.4;
};
[[nodiscard]] MadeSheet madeSheet(const SheetWish& wish);

[[nodiscard]] double lengthOf(const PaperLine& line);
/// The stretch of a line between two distances along it.
[[nodiscard]] PaperLine stretch(const PaperLine& line, double from, double to);
/// Distance of a place from a line.
[[nodiscard]] double besideLine(PaperPoint at, const PaperLine& line);
/// Places at equal steps along a line.
[[nodiscard]] PaperLine paced(const PaperLine& line, double step);

}  // namespace crosstick::testing
