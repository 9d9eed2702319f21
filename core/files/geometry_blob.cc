#include "core/files/geometry_blob.h"

#include <array>
#include <bit>
#include <cstring>

#include "core/files/faults.h"

namespace crosstick::files {
namespace {

static_assert(std::endian::native == std::endian::little, "blobs are copied, not converted, where the machine allows");

constexpr std::size_t kMostPoints = 1'000'000;
enum WkbType : std::uint32_t { kPoint = 1, kLine = 2, kPolygon = 3 };

class Writer {
  public:
    template <class T>
    void add(T value) {
        const auto at = bytes_.size();
        bytes_.resize(at + sizeof(T));
        std::memcpy(bytes_.data() + at, &value, sizeof(T));
    }
    void add(geodesy::PlanePoint p) {
        add(p.easting.value());
        add(p.northing.value());
    }
    void reserve(std::size_t size) { bytes_.reserve(size); }
    [[nodiscard]] Blob take() && { return std::move(bytes_); }

  private:
    Blob bytes_;
};

class Reader {
  public:
    explicit Reader(std::span<const std::uint8_t> bytes) : rest_(bytes) {}
    void order(bool little) { swap_ = !little; }
    void skip(std::size_t count) {
        good_ = good_ && count <= rest_.size();
        rest_ = rest_.subspan(good_ ? count : rest_.size());
    }
    template <class T>
    T take() {
        T value{};
        if (!good_ || rest_.size() < sizeof(T)) {
            good_ = false;
            return value;
        }
        std::array<std::uint8_t, sizeof(T)> raw{};
        std::copy_n(rest_.begin(), sizeof(T), raw.begin());
        if (swap_) {
            std::reverse(raw.begin(), raw.end());
        }
        std::memcpy(&value, raw.data(), sizeof(T));
        rest_ = rest_.subspan(sizeof(T));
        return value;
    }
    /// True where so many points can still be there.
    [[nodiscard]] bool holds(std::size_t points) const {
        return good_ && points <= kMostPoints && points * 16 <= rest_.size();
    }
    [[nodiscard]] bool good() const { return good_; }
    [[nodiscard]] bool atEnd() const { return rest_.empty(); }

  private:
    std::span<const std::uint8_t> rest_;
    bool swap_ = false;
    bool good_ = true;
};

bool readPoints(Reader& reader, std::size_t count, Points& points) {
    if (!reader.holds(count)) {
        return false;
    }
    points.reserve(count);
    for (std::size_t n = 0; n < count; ++n) {
        const auto x = reader.take<double>();
        const auto y = reader.take<double>();
        if (!std::isfinite(x) || !std::isfinite(y)) {
            return false;
        }
        points.push_back({Metres(x), Metres(y)});
    }
    return true;
}

/// Envelope bytes by the indicator in the flags (0 to 4).
constexpr std::array<std::size_t, 5> kEnvelope{0, 32, 48, 48, 64};

}  // namespace

Blob geometryBlob(const Points& points, measures::Shape shape, int srsId) {
    if (points.empty()) {
        return {};
    }
    Writer out;
    out.reserve(32 + 16 * (points.size() + 1));
    out.add<std::uint8_t>('G');
    out.add<std::uint8_t>('P');
    out.add<std::uint8_t>(0);     // version 1
    out.add<std::uint8_t>(0x01);  // little endian, no envelope
    out.add<std::int32_t>(srsId);
    out.add<std::uint8_t>(1);
    const auto count = static_cast<std::uint32_t>(points.size());
    if (count == 1) {
        out.add<std::uint32_t>(kPoint);
        out.add(points.front());
        return std::move(out).take();
    }
    const bool isRing = shape == measures::Shape::Area && count >= 3;
    out.add<std::uint32_t>(isRing ? kPolygon : kLine);
    if (isRing) {
        out.add<std::uint32_t>(1);
    }
    out.add<std::uint32_t>(isRing ? count + 1 : count);
    for (const geodesy::PlanePoint p : points) {
        out.add(p);
    }
    if (isRing) {
        out.add(points.front());
    }
    return std::move(out).take();
}

Result<Points> pointsFromBlob(std::span<const std::uint8_t> bytes) {
    const auto bad = [] { return fail(kBadGeometry); };
    if (bytes.empty()) {
        return Points{};
    }
    Reader reader(bytes);
    const bool isGp = reader.take<std::uint8_t>() == 'G' && reader.take<std::uint8_t>() == 'P';
    reader.skip(1);
    const auto flags = reader.take<std::uint8_t>();
    const std::size_t envelope = (flags >> 1U) & 7U;
    reader.skip(4);
    if (!isGp || envelope >= kEnvelope.size()) {
        return bad();
    }
    reader.skip(kEnvelope[envelope]);
    reader.order(reader.take<std::uint8_t>() == 1);
    const auto type = reader.take<std::uint32_t>();
    if (type == kPolygon && reader.take<std::uint32_t>() != 1) {
        return bad();
    }
    if (type < kPoint || type > kPolygon) {
        return bad();
    }
    const std::size_t count = type == kPoint ? 1 : reader.take<std::uint32_t>();
    Points points;
    if (!reader.good() || !readPoints(reader, count, points) || !reader.atEnd()) {
        return bad();
    }
    if (type == kPolygon && points.size() > 1) {
        points.pop_back();
    }
    return points;
}

}  // namespace crosstick::files
