#pragma once

#include <cstdint>
#include <vector>

#include <QColor>

namespace crosstick::demo {

/// The at most 256 inks of the sheet's file, the same for every picture: an even ramp of shading for open land and for
/// wood, so fine that no step of it can be seen, and every line ink in even steps over the grounds it is drawn on.
[[nodiscard]] std::vector<QRgb> sheetPalette();

/// Finds the nearest ink of a palette for a colour, weighing green before red before blue; remembers what it found.
class InkFinder {
  public:
    /// @param inks  1 to 256
    explicit InkFinder(std::vector<QRgb> inks);
    [[nodiscard]] std::uint8_t inkFor(QRgb colour) {
        std::uint16_t& known = known_[colour & 0xFFFFFFU];
        if (known == kUnknown) {
            known = nearest(colour);
        }
        return static_cast<std::uint8_t>(known);
    }

  private:
    static constexpr std::uint16_t kUnknown = 0xFFFF;
    std::vector<QRgb> inks_;
    std::vector<std::uint16_t> known_;  ///< by 24 bits of colour

    [[nodiscard]] std::uint16_t nearest(QRgb colour) const;
};

}  // namespace crosstick::demo
