#include "core/registration/registering.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "core/geodesy/crs.h"
#include "core/geodesy/grid_reference.h"
#include "core/registration/printed_grid.h"

namespace crosstick::registration {
namespace {

constexpr double kSameMark = 3;   // pixels beside a mark that are the mark itself
constexpr double kInside = 0.02;  // of the picture's sides, in which no map is printed
constexpr double kFarthest = 3;   // times the marks' extent, beyond which a fit of few says little
constexpr int kMostLines = 80;    // either way, that are looked through for a proposal

double apart(PixelPoint a, PixelPoint b) {
    return std::hypot(a.x - b.x, a.y - b.y);
}

/// The longest distance between two marks.
double extentOf(const std::vector<NamedMark>& marks) {
    double extent = 0;
    for (const NamedMark& a : marks) {
        for (const NamedMark& b : marks) {
            extent = std::max(extent, apart(a.at, b.at));
        }
    }
    return extent;
}

/// A place in metres, to the millimetre: six figures at least, so that they are the whole of the grid's.
std::string metresName(geodesy::PlanePoint place) {
    const auto name = [](Metres metres) {
        std::string text = fmt::format("{:010.3f}", metres.value());
        text.erase(text.find_last_not_of('0') + 1);
        return text.ends_with('.') ? text.substr(0, text.size() - 1) : text;
    };
    return name(place.easting) + ' ' + name(place.northing);
}

struct Scored {
    Proposal proposal;
    double score = 0;
};

}  // namespace

std::string printedName(geodesy::PlanePoint place, Metres interval) {
    const bool isFine = interval < Metres(1000);
    const double unit = isFine ? 100 : 1000;
    const auto figures = [&](Metres along) {
        const double whole = std::floor(along.value() / unit + 0.5);
        return static_cast<int>(whole - std::floor(whole / (unit == 100 ? 1000 : 100)) * (unit == 100 ? 1000 : 100));
    };
    return isFine ? fmt::format("{:03} {:03}", figures(place.easting), figures(place.northing))
                  : fmt::format("{:02} {:02}", figures(place.easting), figures(place.northing));
}

std::string squareOf(geodesy::PlanePoint place, const std::string& crs) {
    const auto facts = geodesy::describeCrs(crs);
    if (!facts || !facts->onWgs84 || !facts->utm) {
        return {};
    }
    constexpr Metres kInside{0.01};  // a crossing on the edge of a square belongs to the one that begins there
    const auto parts = geodesy::mgrsParts({*facts->utm, {place.easting + kInside, place.northing + kInside}},
                                          geodesy::Digits::SquareOnly);
    return parts ? parts->square : std::string();
}

Result<Registering::Read> Registering::read(const Collar& collar, std::vector<NamedMark> marks) {
    auto grid = PrintedGrid::of(collar.crs, collar.square);
    if (!grid) {
        return tl::unexpected(grid.error());
    }
    for (NamedMark& mark : marks) {
        const auto place = grid->read(mark.printed);
        if (!place) {
            return tl::unexpected(place.error());
        }
        mark.place = *place;
    }
    return Read{std::move(marks), grid->crs()};
}

Result<void> Registering::setCollar(Collar collar) {
    return read(collar, marks_).map([&](Read read) {
        collar_ = std::move(collar);
        marks_ = std::move(read.marks);
        crs_ = std::move(read.crs);
        crossings_.clear();
        renew();
    });
}

Result<void> Registering::add(PixelPoint at, const std::string& printed) {
    std::vector<NamedMark> more = marks_;
    more.push_back({at, printed, {}});
    return read(collar_, std::move(more)).map([&](Read read) {
        marks_ = std::move(read.marks);
        crs_ = std::move(read.crs);
        renew();
    });
}

Result<void> Registering::takeUp(const std::vector<plan::GridMark>& marks) {
    if (marks.empty()) {
        return {};
    }
    std::vector<NamedMark> named;
    for (const plan::GridMark& mark : marks) {
        named.push_back({{mark.spot.column, mark.spot.row}, metresName(mark.place), {}});
    }
    return read(collar_, std::move(named)).map([&](Read read) {
        marks_ = std::move(read.marks);
        crs_ = std::move(read.crs);
        crossings_.clear();
        renew();
    });
}

std::vector<plan::GridMark> Registering::kept() const {
    std::vector<plan::GridMark> kept;
    for (const Mark& mark : all()) {
        if (kept.size() < plan::kMostGridMarks) {
            kept.push_back({{mark.at.x, mark.at.y}, mark.place});
        }
    }
    return kept;
}

void Registering::move(std::size_t mark, PixelPoint to) {
    if (mark < marks_.size()) {
        marks_[mark].at = to;
        renew();
    }
}

/// The marks after it were read by what it said: where they no longer can be, it stays.
void Registering::remove(std::size_t mark) {
    if (mark >= marks_.size()) {
        return;
    }
    std::vector<NamedMark> fewer = marks_;
    fewer.erase(fewer.begin() + static_cast<std::ptrdiff_t>(mark));
    if (auto left = read(collar_, std::move(fewer))) {
        marks_ = std::move(left->marks);
        crs_ = std::move(left->crs);
        crossings_.clear();
        renew();
    }
}

void Registering::take(const std::vector<Crossing>& crossings) {
    crossings_.clear();
    for (const Crossing& crossing : crossings) {
        const bool isMark = std::any_of(marks_.begin(), marks_.end(), [&](const NamedMark& mark) {
            return apart(mark.at, crossing.at) < kSameMark || mark.place == crossing.place;
        });
        if (!isMark) {
            crossings_.push_back({crossing, crossing.confidence >= kSure});
        }
    }
    renew();
}

void Registering::use(std::size_t crossing, bool isUsed) {
    if (crossing < crossings_.size()) {
        crossings_[crossing].isUsed = isUsed;
        renew();
    }
}

std::vector<Mark> Registering::all() const {
    std::vector<Mark> all;
    for (const NamedMark& mark : marks_) {
        all.push_back({mark.at, mark.place});
    }
    for (const FoundCrossing& found : crossings_) {
        if (found.isUsed) {
            all.push_back({found.crossing.at, found.crossing.place});
        }
    }
    return all;
}

void Registering::renew() {
    fit_ = fitMarks(all());
}

std::optional<Metres> Registering::interval() const {
    std::vector<Mark> set;
    for (const NamedMark& mark : marks_) {
        set.push_back({mark.at, mark.place});
    }
    const auto intervals = fit_ ? intervalsOf(set, fit_->model) : std::vector<Metres>{};
    return intervals.empty() ? std::nullopt : std::optional(intervals.front());
}

std::optional<Proposal> Registering::proposal(std::size_t skip) const {
    const auto lines = interval();
    if (marks_.size() < 2 || !lines) {
        return std::nullopt;
    }
    const double farthest = kFarthest * extentOf(marks_);
    const double step = lines->value();
    const geodesy::PlanePoint from = marks_.front().place;
    const double east = std::floor(from.easting.value() / step + 0.5);
    const double north = std::floor(from.northing.value() / step + 0.5);
    std::vector<Scored> candidates;
    for (int e = -kMostLines; e <= kMostLines; ++e) {
        for (int n = -kMostLines; n <= kMostLines; ++n) {
            const geodesy::PlanePoint place{Metres((east + e) * step), Metres((north + n) * step)};
            const auto at = fit_->model.pixel(place);
            if (!at || at->x < kInside * columns_ || at->y < kInside * rows_ || at->x > (1 - kInside) * columns_ ||
                at->y > (1 - kInside) * rows_) {
                continue;
            }
            double nearest = 1e9;
            for (const NamedMark& mark : marks_) {
                nearest = std::min(nearest, apart(mark.at, *at));
            }
            if (nearest <= farthest && nearest > kSameMark) {
                candidates.push_back({{*at, place, printedName(place, *lines)}, nearest});
            }
        }
    }
    if (skip >= candidates.size()) {
        return std::nullopt;
    }
    const auto wanted = candidates.begin() + static_cast<std::ptrdiff_t>(skip);
    std::nth_element(candidates.begin(), wanted, candidates.end(), [](const Scored& a, const Scored& b) {
        return a.score != b.score ? a.score > b.score : a.proposal.printed < b.proposal.printed;
    });
    return wanted->proposal;
}

}  // namespace crosstick::registration
