#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "core/plan/sheet.h"
#include "core/registration/crossing_finder.h"
#include "core/registration/fit.h"
#include "core/registration/lattice.h"
#include "core/units/result.h"

namespace crosstick::registration {

/// What a sheet's collar says of its grid, as it is printed there. Empty where nobody has said it yet.
struct Collar {
    std::string square;          ///< grid zone designation and 100 km square: "18S UJ"
    std::string crs;             ///< its grid where that is no UTM zone on WGS 84: "EPSG:26915"
    std::optional<Scale> scale;  ///< as printed
};

/// A mark that somebody has set.
struct NamedMark {
    PixelPoint at;
    std::string printed;  ///< as it was typed: "45 62"
    geodesy::PlanePoint place;
};

/// A crossing that the picture shows and that is used unless somebody says otherwise.
struct FoundCrossing {
    Crossing crossing;
    bool isUsed = false;
};

/// Where the next mark would help most.
struct Proposal {
    PixelPoint at;
    geodesy::PlanePoint place;
    std::string printed;
};

/// A picture while it is registered: what its collar says, the marks, the crossings found from them, and the fit of
/// all. One thread at a time.
class Registering {
  public:
    Registering(int columns, int rows) : columns_(columns), rows_(rows) {}

    /// Reads all marks anew by it. Errors: those of PrintedGrid; everything then stays as it was.
    [[nodiscard]] Result<void> setCollar(Collar collar);
    /// @param printed  what the map prints at a crossing: "45 62", a full grid, latitude and longitude
    /// Errors: those of PrintedGrid::read().
    [[nodiscard]] Result<void> add(PixelPoint at, const std::string& printed);
    /// The marks of a sheet that was laid before, by the collar's grid, in place of those that are set. None: nothing.
    /// Errors: those of PrintedGrid::read().
    [[nodiscard]] Result<void> takeUp(const std::vector<plan::GridMark>& marks);
    /// What the fit is to, for the plan to keep: at most plan::kMostGridMarks, those that somebody set the first.
    [[nodiscard]] std::vector<plan::GridMark> kept() const;
    void move(std::size_t mark, PixelPoint to);
    void remove(std::size_t mark);
    /// Crossings at the marks themselves are passed over; unsure ones are shown and not used.
    void take(const std::vector<Crossing>& crossings);
    void use(std::size_t crossing, bool isUsed);

    [[nodiscard]] const Collar& collar() const { return collar_; }
    [[nodiscard]] const std::string& crs() const { return crs_; }  ///< empty until the first mark or the collar says it
    [[nodiscard]] const std::vector<NamedMark>& marks() const { return marks_; }
    [[nodiscard]] const std::vector<FoundCrossing>& crossings() const { return crossings_; }
    /// Those that somebody set, then the crossings in use: in the order of the fit's residuals.
    [[nodiscard]] std::vector<Mark> all() const;
    [[nodiscard]] const Result<Fit>& fit() const { return fit_; }
    /// The interval of the printed lines, by the marks.
    [[nodiscard]] std::optional<Metres> interval() const;
    /// From two marks on: the crossing inside the picture that is farthest from every mark, no farther out than three
    /// times the marks' own extent, where the fit can still say where it is. @param skip  so many better ones
    [[nodiscard]] std::optional<Proposal> proposal(std::size_t skip = 0) const;

  private:
    int columns_, rows_;
    Collar collar_;
    std::string crs_;
    std::vector<NamedMark> marks_;
    std::vector<FoundCrossing> crossings_;
    Result<Fit> fit_ = fitMarks({});

    struct Read {
        std::vector<NamedMark> marks;
        std::string crs;
    };
    [[nodiscard]] static Result<Read> read(const Collar& collar, std::vector<NamedMark> marks);
    void renew();
};

/// A crossing in the figures that stand along the edge of a map: "45 62", "453 627" on lines closer than a kilometre.
[[nodiscard]] std::string printedName(geodesy::PlanePoint place, Metres interval);

/// The 100 km square of a place: "FL"; empty on a grid that is no UTM or UPS on WGS 84.
[[nodiscard]] std::string squareOf(geodesy::PlanePoint place, const std::string& crs);

}  // namespace crosstick::registration
