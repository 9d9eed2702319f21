#include "core/worker/record.h"

#include <bit>
#include <cmath>

namespace crosstick::worker {
namespace {

constexpr std::size_t kHead = 5;

template <class Unsigned>
void put(std::vector<std::uint8_t>& bytes, Unsigned value) {
    for (std::size_t n = 0; n < sizeof(Unsigned); ++n) {
        bytes.push_back(static_cast<std::uint8_t>((value >> (8 * n)) & 0xffU));
    }
}

template <class Unsigned>
Unsigned taken(std::span<const std::uint8_t> bytes) {
    Unsigned value = 0;
    for (std::size_t n = 0; n < sizeof(Unsigned); ++n) {
        value |= static_cast<Unsigned>(Unsigned{bytes[n]} << (8 * n));
    }
    return value;
}

}  // namespace

std::vector<std::uint8_t> wireBytes(const Record& record) {
    std::vector<std::uint8_t> wire;
    wire.reserve(kHead + record.body.size());
    put(wire, static_cast<std::uint32_t>(record.body.size()));
    wire.push_back(record.kind);
    wire.insert(wire.end(), record.body.begin(), record.body.end());
    return wire;
}

void RecordStream::add(std::span<const std::uint8_t> bytes) {
    bytes_.erase(bytes_.begin(), bytes_.begin() + static_cast<std::ptrdiff_t>(begin_));
    begin_ = 0;
    bytes_.insert(bytes_.end(), bytes.begin(), bytes.end());
}

std::optional<Record> RecordStream::next() {
    const std::span<const std::uint8_t> rest = std::span(bytes_).subspan(begin_);
    if (garbled_ || rest.size() < kHead) {
        return std::nullopt;
    }
    const std::size_t length = taken<std::uint32_t>(rest);
    garbled_ = length > kLongestBody;
    if (garbled_ || rest.size() < kHead + length) {
        return std::nullopt;
    }
    const auto body = rest.subspan(kHead, length);
    begin_ += kHead + length;
    return Record{rest[4], {body.begin(), body.end()}};
}

Packer& Packer::number(std::int64_t value) {
    put(body_, static_cast<std::uint64_t>(value));
    return *this;
}

Packer& Packer::real(double value) {
    put(body_, std::bit_cast<std::uint64_t>(value));
    return *this;
}

Packer& Packer::text(std::string_view value) {
    put(body_, static_cast<std::uint32_t>(value.size()));
    body_.insert(body_.end(), value.begin(), value.end());
    return *this;
}

Packer& Packer::bytes(std::span<const std::uint8_t> value) {
    body_.insert(body_.end(), value.begin(), value.end());
    return *this;
}

std::span<const std::uint8_t> Unpacker::bytes(std::size_t count) {
    if (!sound_ || count > rest_.size()) {
        sound_ = false;
        return {};
    }
    const auto first = rest_.first(count);
    rest_ = rest_.subspan(count);
    return first;
}

std::int64_t Unpacker::number() {
    const auto eight = bytes(8);
    return sound_ ? static_cast<std::int64_t>(taken<std::uint64_t>(eight)) : 0;
}

std::int64_t Unpacker::number(std::int64_t least, std::int64_t most) {
    const std::int64_t value = number();
    sound_ = sound_ && value >= least && value <= most;
    return sound_ ? value : least;
}

double Unpacker::real() {
    const auto eight = bytes(8);
    const double value = sound_ ? std::bit_cast<double>(taken<std::uint64_t>(eight)) : 0;
    sound_ = sound_ && std::isfinite(value);
    return sound_ ? value : 0;
}

std::string Unpacker::text(std::size_t longest) {
    const auto four = bytes(4);
    const std::size_t length = sound_ ? taken<std::uint32_t>(four) : 0;
    sound_ = sound_ && length <= longest;
    const auto letters = bytes(sound_ ? length : 0);
    return {letters.begin(), letters.end()};
}

}  // namespace crosstick::worker
