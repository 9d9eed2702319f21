#include "core/sheets/averaging.h"

#include <algorithm>
#include <cmath>

namespace crosstick::sheets {
namespace {

/// Sums of a block of pixels, to be averaged. 64 bit: a block may be the whole sheet.
struct Sum {
    std::uint64_t red = 0, green = 0, blue = 0, count = 0;
    void add(std::uint32_t rgb) {
        red += (rgb >> 16U) & 0xffU;
        green += (rgb >> 8U) & 0xffU;
        blue += rgb & 0xffU;
        ++count;
    }
    [[nodiscard]] std::uint32_t mean() const {
        const auto part = [&](std::uint64_t sum) { return static_cast<std::uint32_t>((sum + count / 2) / count); };
        return 0xff000000U | (part(red) << 16U) | (part(green) << 8U) | part(blue);
    }
};

std::size_t place(const Pixels& pixels, int column, int row) {
    return static_cast<std::size_t>(row) * static_cast<std::size_t>(pixels.columns) + static_cast<std::size_t>(column);
}

}  // namespace

int Steps::from(int n) const {
    return static_cast<int>(std::floor(start + n * each));
}

int Steps::to(int n) const {
    return std::max(from(n) + 1, from(n + 1));
}

void averageInto(const Piece& source, Steps across, Steps down, int firstRow, int endRow, Pixels& target) {
    const int endColumn = source.column + source.pixels.columns;
    const int endSourceRow = source.row + source.pixels.rows;
    for (int y = firstRow; y < endRow; ++y) {
        const int top = std::max(down.from(y), source.row);
        const int bottom = std::min(down.to(y), endSourceRow);
        for (int x = 0; x < target.columns; ++x) {
            const int left = std::max(across.from(x), source.column);
            const int right = std::min(across.to(x), endColumn);
            Sum sum;
            for (int row = top; row < bottom; ++row) {
                for (int column = left; column < right; ++column) {
                    sum.add(source.pixels.rgb[place(source.pixels, column - source.column, row - source.row)]);
                }
            }
            if (sum.count > 0) {
                target.rgb[place(target, x, y)] = sum.mean();
            }
        }
    }
}

}  // namespace crosstick::sheets
