#include "tests/terrain/printed_paper.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>

#include <cpl_vsi.h>
#include <gdal_priv.h>

namespace crosstick::testing {
namespace {

double apart(PaperPoint a, PaperPoint b) {
    return std::hypot(a.x - b.x, a.y - b.y);
}

double besidePiece(PaperPoint at, PaperPoint a, PaperPoint b) {
    const double square = (b.x - a.x) * (b.x - a.x) + (b.y - a.y) * (b.y - a.y);
    const double along = (at.x - a.x) * (b.x - a.x) + (at.y - a.y) * (b.y - a.y);
    const double share = square > 0 ? std::clamp(along / square, 0.0, 1.0) : 0;
    return apart(at, {a.x + (b.x - a.x) * share, a.y + (b.y - a.y) * share});
}

/// Strokes of a few letters in a square of 1, y up.
const std::map<char, std::vector<PaperLine>>& letterStrokes() {
    static const std::map<char, std::vector<PaperLine>> kLetters{
        {'A', {{{0, 0}, {0.4, 1}, {0.8, 0}}, {{0.15, 0.35}, {0.65, 0.35}}}},
        {'E', {{{0.7, 0}, {0, 0}, {0, 1}, {0.7, 1}}, {{0, 0.5}, {0.6, 0.5}}}},
        {'K', {{{0, 0}, {0, 1}}, {{0.7, 1}, {0, 0.4}}, {{0.25, 0.6}, {0.7, 0}}}},
        {'L', {{{0, 1}, {0, 0}, {0.6, 0}}}},
        {'N', {{{0, 0}, {0, 1}, {0.7, 0}, {0.7, 1}}}},
        {'O', {{{0.2, 0}, {0, 0.3}, {0, 0.7}, {0.2, 1}, {0.55, 1}, {0.75, 0.7}, {0.75, 0.3}, {0.55, 0}, {0.2, 0}}}},
        {'R', {{{0, 0}, {0, 1}, {0.5, 1}, {0.7, 0.75}, {0.5, 0.5}, {0, 0.5}}, {{0.35, 0.5}, {0.7, 0}}}},
        {'T', {{{0, 1}, {0.8, 1}}, {{0.4, 1}, {0.4, 0}}}}};
    return kLetters;
}

}  // namespace

Result<sheets::Pixels> HeldPixels::read(sheets::PixelWindow window, int columns, int rows) const {
    sheets::Pixels part{columns, rows, {}};
    const int step = std::max(1, window.columns / columns);
    for (int row = 0; row < rows; ++row) {
        for (int column = 0; column < columns; ++column) {
            std::array<std::uint32_t, 4> sums{};
            for (int n = 0; n < step * step; ++n) {
                const int c = window.column + column * step + n % step;
                const int r = window.row + row * step + n / step;
                if (c >= 0 && r >= 0 && c < pixels_.columns && r < pixels_.rows) {
                    const std::uint32_t rgb = pixels_.rgb[static_cast<std::size_t>(r * pixels_.columns + c)];
                    sums[0] += (rgb >> 16U) & 255U;
                    sums[1] += (rgb >> 8U) & 255U;
                    sums[2] += rgb & 255U;
                    ++sums[3];
                }
            }
            const std::uint32_t n = std::max(1U, sums[3]);
            part.rgb.push_back(sums[3] == 0 ? 0
                                            : 0xff000000U | (sums[0] / n << 16U) | (sums[1] / n << 8U) | sums[2] / n);
        }
    }
    return part;
}

PrintedPaper::PrintedPaper(double widthMm, double heightMm, double pixelsPerMm, terrain::Colour ground)
    : columns_(static_cast<int>(widthMm * pixelsPerMm)),
      rows_(static_cast<int>(heightMm * pixelsPerMm)),
      pixelsPerMm_(pixelsPerMm),
      colours_(static_cast<std::size_t>(columns_) * static_cast<std::size_t>(rows_), ground),
      cover_(colours_.size(), 0) {}

void PrintedPaper::coverPiece(PaperPoint a, PaperPoint b, double widthMm) {
    const double half = widthMm / 2 * pixelsPerMm_;
    const PaperPoint from{a.x * pixelsPerMm_, a.y * pixelsPerMm_};
    const PaperPoint to{b.x * pixelsPerMm_, b.y * pixelsPerMm_};
    const double around = half + 1;
    const int left = std::max(0, static_cast<int>(std::min(from.x, to.x) - around));
    const int right = std::min(columns_ - 1, static_cast<int>(std::max(from.x, to.x) + around));
    const int top = std::max(0, static_cast<int>(std::min(from.y, to.y) - around));
    const int bottom = std::min(rows_ - 1, static_cast<int>(std::max(from.y, to.y) + around));
    for (int row = top; row <= bottom; ++row) {
        for (int column = left; column <= right; ++column) {
            const double away = besidePiece({column + 0.5, row + 0.5}, from, to);
            const auto covered = static_cast<float>(std::clamp(half + 0.5 - away, 0.0, std::min(1.0, 2 * half)));
            float& cover = cover_[static_cast<std::size_t>(row * columns_ + column)];
            cover = std::max(cover, covered);
        }
    }
}

void PrintedPaper::layCover(terrain::Colour ink) {
    for (std::size_t n = 0; n < cover_.size(); ++n) {
        if (cover_[n] > 0) {
            for (std::size_t k = 0; k < 3; ++k) {
                colours_[n][k] += (ink[k] - colours_[n][k]) * static_cast<double>(cover_[n]);
            }
            cover_[n] = 0;
        }
    }
}

void PrintedPaper::stroke(const PaperLine& line, terrain::Colour ink, double widthMm, Broken broken) {
    const double period = broken.on + broken.off;
    const double length = lengthOf(line);
    for (double from = 0; from<length; from += period> 0 ? period : length) {
        const PaperLine piece = period > 0 ? stretch(line, from, std::min(length, from + broken.on)) : line;
        for (std::size_t n = 0; n + 1 < piece.size(); ++n) {
            coverPiece(piece[n], piece[n + 1], widthMm);
        }
    }
    layCover(ink);
}

void PrintedPaper::strokeGrowing(const PaperLine& line, terrain::Colour ink, double fromMm, double toMm) {
    for (std::size_t n = 0; n + 1 < line.size(); ++n) {
        const double share = static_cast<double>(n) / static_cast<double>(line.size());
        coverPiece(line[n], line[n + 1], fromMm + (toMm - fromMm) * share);
    }
    layCover(ink);
}

void PrintedPaper::blot(PaperPoint middle, double radiusMm, terrain::Colour tint) {
    for (int row = 0; row < rows_; ++row) {
        for (int column = 0; column < columns_; ++column) {
            const double x = (column + 0.5) / pixelsPerMm_ - middle.x;
            const double y = (row + 0.5) / pixelsPerMm_ - middle.y;
            const double turn = std::atan2(y, x);
            const double edge = radiusMm * (1 + 0.2 * std::sin(3 * turn) + 0.1 * std::sin(7 * turn + 1));
            const double in = std::clamp((edge - std::hypot(x, y)) * pixelsPerMm_ + 0.5, 0.0, 1.0);
            cover_[static_cast<std::size_t>(row * columns_ + column)] = static_cast<float>(in);
        }
    }
    layCover(tint);
}

void PrintedPaper::letters(const std::string& word, PaperPoint at, double heightMm, terrain::Colour ink) {
    for (const char letter : word) {
        for (const PaperLine& part : letterStrokes().at(letter)) {
            for (std::size_t n = 0; n + 1 < part.size(); ++n) {
                const auto place = [&](PaperPoint p) {
                    return PaperPoint{at.x + p.x * heightMm, at.y - p.y * heightMm};
                };
                coverPiece(place(part[n]), place(part[n + 1]), heightMm * 0.13);
            }
        }
        at.x += heightMm * 1.05;
    }
    layCover(ink);
}

sheets::Pixels PrintedPaper::pixels() const {
    sheets::Pixels pixels{columns_, rows_, {}};
    for (const terrain::Colour& colour : colours_) {
        const auto part = [](double value) { return static_cast<std::uint32_t>(std::lround(value)); };
        pixels.rgb.push_back(0xff000000U | (part(colour[0]) << 16U) | (part(colour[1]) << 8U) | part(colour[2]));
    }
    return pixels;
}

sheets::Pixels scanned(const sheets::Pixels& pixels, int jpegQuality, double grain, std::uint32_t seed) {
    GDALAllRegister();
    std::mt19937 random(seed);
    std::normal_distribution<double> noise(0, grain);
    const auto count = pixels.rgb.size();
    std::vector<std::uint8_t> bytes(count * 3);
    const auto value = [&](int column, int row, unsigned shift) {
        const int c = std::clamp(column, 0, pixels.columns - 1);
        const int r = std::clamp(row, 0, pixels.rows - 1);
        return static_cast<double>((pixels.rgb[static_cast<std::size_t>(r * pixels.columns + c)] >> shift) & 255U);
    };
    for (int row = 0; row < pixels.rows; ++row) {
        for (int column = 0; column < pixels.columns; ++column) {
            for (unsigned band = 0; band < 3; ++band) {
                const unsigned shift = 16 - 8 * band;
                const double soft = 0.6 * value(column, row, shift) +
                                    0.1 * (value(column - 1, row, shift) + value(column + 1, row, shift) +
                                           value(column, row - 1, shift) + value(column, row + 1, shift));
                bytes[band * count + static_cast<std::size_t>(row * pixels.columns + column)] =
                    static_cast<std::uint8_t>(std::clamp(std::lround(soft + noise(random)), 0L, 255L));
            }
        }
    }
    GDALDriverManager& drivers = *GetGDALDriverManager();
    const std::unique_ptr<GDALDataset> plain(
        drivers.GetDriverByName("MEM")->Create("", pixels.columns, pixels.rows, 3, GDT_Byte, nullptr));
    const auto pass = [&](GDALDataset& dataset, GDALRWFlag way) {
        return dataset.RasterIO(way, 0, 0, pixels.columns, pixels.rows, bytes.data(), pixels.columns, pixels.rows,
                                GDT_Byte, 3, nullptr, 0, 0, 0, nullptr) == CE_None;
    };
    const std::string quality = "QUALITY=" + std::to_string(jpegQuality);
    std::array<char*, 2> options{const_cast<char*>(quality.c_str()), nullptr};
    const std::string name = "/vsimem/scan-" + std::to_string(seed) + ".jpg";
    pass(*plain, GF_Write);
    {
        const std::unique_ptr<GDALDataset> written(drivers.GetDriverByName("JPEG")->CreateCopy(
            name.c_str(), plain.get(), 0, options.data(), nullptr, nullptr));
    }
    const std::unique_ptr<GDALDataset> read(GDALDataset::Open(name.c_str()));
    if (read == nullptr || !pass(*read, GF_Read)) {
        return {};
    }
    sheets::Pixels out{pixels.columns, pixels.rows, std::vector<std::uint32_t>(count)};
    for (std::size_t n = 0; n < count; ++n) {
        out.rgb[n] = 0xff000000U | (std::uint32_t{bytes[n]} << 16U) | (std::uint32_t{bytes[count + n]} << 8U) |
                     bytes[2 * count + n];
    }
    VSIUnlink(name.c_str());
    return out;
}

double lengthOf(const PaperLine& line) {
    double length = 0;
    for (std::size_t n = 0; n + 1 < line.size(); ++n) {
        length += apart(line[n], line[n + 1]);
    }
    return length;
}

PaperLine stretch(const PaperLine& line, double from, double to) {
    PaperLine part;
    double along = 0;
    for (std::size_t n = 0; n + 1 < line.size(); ++n) {
        const double length = apart(line[n], line[n + 1]);
        const auto at = [&](double where) {
            const double share = length > 0 ? std::clamp((where - along) / length, 0.0, 1.0) : 0;
            return PaperPoint{line[n].x + (line[n + 1].x - line[n].x) * share,
                              line[n].y + (line[n + 1].y - line[n].y) * share};
        };
        if (along + length >= from && along <= to) {
            if (part.empty()) {
                part.push_back(at(from));
            }
            part.push_back(at(to));
        }
        along += length;
    }
    return part;
}

double besideLine(PaperPoint at, const PaperLine& line) {
    double least = 1e9;
    for (std::size_t n = 0; n + 1 < line.size(); ++n) {
        least = std::min(least, besidePiece(at, line[n], line[n + 1]));
    }
    return least;
}

PaperLine paced(const PaperLine& line, double step) {
    PaperLine places{line.front()};
    double left = step;
    for (std::size_t n = 0; n + 1 < line.size(); ++n) {
        const double length = apart(line[n], line[n + 1]);
        double at = left;
        for (; at <= length; at += step) {
            places.push_back({line[n].x + (line[n + 1].x - line[n].x) * at / length,
                              line[n].y + (line[n + 1].y - line[n].y) * at / length});
        }
        left = at - length;
    }
    return places;
}

}  // namespace crosstick::testing
