#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace crosstick::worker {

/// One message between the program and a worker: a kind and flat bytes. On the wire: length of the body (4 bytes), kind
/// (1 byte), body; numbers little endian.
struct Record {
    std::uint8_t kind = 0;
    std::vector<std::uint8_t> body;
    friend bool operator==(const Record&, const Record&) = default;
};

/// No body is longer; a longer one announced is garbled.
inline constexpr std::size_t kLongestBody = std::size_t{64} << 20;

[[nodiscard]] std::vector<std::uint8_t> wireBytes(const Record& record);

/// Takes records off a stream of bytes that comes in pieces of any length.
class RecordStream {
  public:
    void add(std::span<const std::uint8_t> bytes);
    /// The next whole record; nothing until it is there, and none any more after a length that is too long.
    [[nodiscard]] std::optional<Record> next();
    [[nodiscard]] bool isGarbled() const { return garbled_; }
    /// True in the middle of a record: the stream must not end here.
    [[nodiscard]] bool isInside() const { return begin_ < bytes_.size(); }

  private:
    std::vector<std::uint8_t> bytes_;
    std::size_t begin_ = 0;
    bool garbled_ = false;
};

/// Puts values one behind the other.
class Packer {
  public:
    Packer& number(std::int64_t value);
    Packer& real(double value);
    Packer& text(std::string_view value);  ///< its length in 4 bytes before it
    Packer& bytes(std::span<const std::uint8_t> value);
    /// What was put so far, as one record; the packer is empty then.
    [[nodiscard]] Record record(std::uint8_t kind) { return {kind, std::move(body_)}; }

  private:
    std::vector<std::uint8_t> body_;
};

/// Takes them off again. What is not there comes as zero or empty, and isSound() is false from then on: ask it once,
/// at the end, before anything is believed.
class Unpacker {
  public:
    explicit Unpacker(std::span<const std::uint8_t> body) : rest_(body) {}
    [[nodiscard]] std::int64_t number();
    /// A number from least to most; another makes the record unsound.
    [[nodiscard]] std::int64_t number(std::int64_t least, std::int64_t most);
    [[nodiscard]] double real();  ///< finite, else unsound
    [[nodiscard]] std::string text(std::size_t longest = std::size_t{1} << 16U);
    [[nodiscard]] std::span<const std::uint8_t> bytes(std::size_t count);
    [[nodiscard]] std::span<const std::uint8_t> rest() { return bytes(rest_.size()); }  ///< all that is left
    [[nodiscard]] bool isSound() const { return sound_; }
    [[nodiscard]] bool isAtEnd() const { return rest_.empty(); }

  private:
    std::span<const std::uint8_t> rest_;
    bool sound_ = true;
};

}  // namespace crosstick::worker
