#include "core/sheets/raster.h"

#include <algorithm>
#include <cmath>
#include <cstring>
#include <iterator>

#include <gdal_priv.h>

#include "core/sheets/averaging.h"
#include "core/sheets/dataset.h"
#include "core/sheets/faults.h"

namespace crosstick::sheets {
namespace {

constexpr int kStripPixels = 1 << 23;                    // 32 MB of colours
constexpr std::size_t kMostKept = std::size_t{1} << 20;  // bytes of a tile, and some

/// The raster at its own size, or one of its reduced levels.
struct Level {
    GDALDataset* dataset = nullptr;
    int columns = 0, rows = 0;
};

/// Red, green, blue as a tile holds them, taken as one colour a step. A vector that is made of them touches each of its
/// pixels once, and each is one load: the byte behind it is loaded too, and dropped.
class Colours {
  public:
    using iterator_category = std::random_access_iterator_tag;
    using value_type = std::uint32_t;
    using difference_type = std::ptrdiff_t;
    using pointer = const std::uint32_t*;
    using reference = std::uint32_t;

    explicit Colours(const std::uint8_t* at) : at_(at) {}
    std::uint32_t operator*() const {
        std::uint32_t four = 0;
        std::memcpy(&four, at_, sizeof(four));
        return 0xff000000U | (__builtin_bswap32(four) >> 8U);
    }
    Colours& operator++() {
        at_ += 3;
        return *this;
    }
    friend std::ptrdiff_t operator-(Colours a, Colours b) { return (a.at_ - b.at_) / 3; }
    friend bool operator==(Colours a, Colours b) { return a.at_ == b.at_; }

  private:
    const std::uint8_t* at_;
};

}  // namespace

struct Raster::Parts {
    std::filesystem::path file;
    DatasetPtr dataset;
    std::vector<Level> levels;        ///< the raster itself first
    std::vector<std::uint8_t> bytes;  ///< of the window that was read last: new pages cost as much as the reading

    [[nodiscard]] const Level& levelFor(double columnsToOne, double rowsToOne) const;
    [[nodiscard]] Result<Pixels> readExact(const Level& level, PixelWindow window);
    [[nodiscard]] Result<Pixels> readAveraged(const Level& level, Steps across, Steps down, int columns, int rows);
};

Raster::Raster(std::unique_ptr<Parts> parts) : parts_(std::move(parts)) {}
Raster::Raster(Raster&&) noexcept = default;
Raster& Raster::operator=(Raster&&) noexcept = default;
Raster::~Raster() = default;

Result<Raster> Raster::open(const std::filesystem::path& copy) {
    auto dataset = openOwn(copy);
    if (!dataset) {
        return tl::unexpected(dataset.error());
    }
    const QuietGdal quiet;
    const char* kind = (*dataset)->GetMetadataItem("KIND", kOwnDomain);
    if (kind == nullptr || !EQUAL(kind, kPyramidKind) || (*dataset)->GetRasterCount() != 3) {
        return fail(kDamaged, {{"file", copy.string()}, {"why", std::string("it is no copy of ours")}});
    }
    auto parts = std::make_unique<Parts>();
    parts->file = copy;
    parts->dataset = std::move(*dataset);
    GDALDataset& own = *parts->dataset;
    parts->levels.push_back({&own, own.GetRasterXSize(), own.GetRasterYSize()});
    for (int n = 0; n < own.GetRasterBand(1)->GetOverviewCount(); ++n) {
        GDALRasterBand* band = own.GetRasterBand(1)->GetOverview(n);
        if (band != nullptr && band->GetDataset() != nullptr) {
            parts->levels.push_back({band->GetDataset(), band->GetXSize(), band->GetYSize()});
        }
    }
    return Raster(std::move(parts));
}

int Raster::columns() const {
    return parts_->levels.front().columns;
}
int Raster::rows() const {
    return parts_->levels.front().rows;
}

/// The smallest that still has every pixel that is asked for. A level has half the pixels of the one before, rounded
/// up: what it stands for is a whole power of two.
const Level& Raster::Parts::levelFor(double columnsToOne, double rowsToOne) const {
    const double wanted = std::min(columnsToOne, rowsToOne) * 1.001;
    std::size_t n = 0;
    while (n + 1 < levels.size() && std::exp2(n + 1) <= wanted) {
        ++n;
    }
    return levels[n];
}

Result<Pixels> Raster::Parts::readExact(const Level& level, PixelWindow w) {
    const QuietGdal quiet;
    const auto count = static_cast<std::size_t>(w.columns) * static_cast<std::size_t>(w.rows);
    // As the tiles are stored: GDAL copies such whole lines, and takes four times as long to spread them out itself.
    bytes.resize(count * 3 + 1);
    if (level.dataset->RasterIO(GF_Read, w.column, w.row, w.columns, w.rows, bytes.data(), w.columns, w.rows, GDT_Byte,
                                3, nullptr, 3, GSpacing{3} * w.columns, 1, nullptr) != CE_None) {
        return fail(kDamaged, {{"file", file.string()},
                               {"why", quiet.lastWords(file)},
                               {"column", std::int64_t{w.column}},
                               {"row", std::int64_t{w.row}}});
    }
    Pixels pixels{w.columns, w.rows, {Colours(bytes.data()), Colours(&bytes[count * 3])}};
    if (bytes.size() > kMostKept) {
        std::vector<std::uint8_t>().swap(bytes);
    }
    return pixels;
}

/// In strips of bounded height, each averaged into the rows that it covers.
Result<Pixels> Raster::Parts::readAveraged(const Level& level, Steps across, Steps down, int columns, int rows) {
    Pixels target{columns, rows,
                  std::vector<std::uint32_t>(static_cast<std::size_t>(columns) * static_cast<std::size_t>(rows), 0)};
    const int left = std::max(0, across.from(0));
    const int right = std::min(level.columns, across.to(columns - 1));
    if (left >= right) {
        return target;
    }
    const double stripRows = std::max(1, kStripPixels / (right - left));
    for (int y = 0; y < rows;) {
        const int yEnd = std::min(rows, y + std::max(1, static_cast<int>(stripRows / std::max(1.0, down.each))));
        const int top = std::max(0, down.from(y));
        const int bottom = std::min(level.rows, down.to(yEnd - 1));
        if (top < bottom) {
            auto exact = readExact(level, {left, top, right - left, bottom - top});
            if (!exact) {
                return tl::unexpected(exact.error());
            }
            averageInto({left, top, std::move(*exact)}, across, down, y, yEnd, target);
        }
        y = yEnd;
    }
    return target;
}

Result<Pixels> Raster::read(PixelWindow window, int columns, int rows) const {
    if (columns < 1 || rows < 1) {
        return Pixels{};
    }
    const double perColumn = static_cast<double>(window.columns) / columns;
    const double perRow = static_cast<double>(window.rows) / rows;
    const Level& level = parts_->levelFor(perColumn, perRow);
    const double share = 1 / std::exp2(&level - parts_->levels.data());
    const Steps across{window.column * share, perColumn * share};
    const Steps down{window.row * share, perRow * share};
    const int left = across.from(0);
    const int top = down.from(0);
    if (across.each == 1 && down.each == 1 && left >= 0 && top >= 0 && left + columns <= level.columns &&
        top + rows <= level.rows) {
        return parts_->readExact(level, {left, top, columns, rows});
    }
    return parts_->readAveraged(level, across, down, columns, rows);
}

}  // namespace crosstick::sheets
