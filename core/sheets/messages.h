#pragma once

#include <filesystem>
#include <optional>
#include <vector>

#include "core/sheets/file_report.h"
#include "core/sheets/pixels.h"
#include "core/units/result.h"
#include "core/worker/record.h"

/// What the program and its reader say to each other: one order, then records until Done or Fault.
namespace crosstick::sheets::messages {

inline constexpr std::uint8_t kOrder = 1;    ///< to the reader
inline constexpr std::uint8_t kReport = 10;  ///< FileReport
inline constexpr std::uint8_t kPicture = 11;
inline constexpr std::uint8_t kProgress = 12;
inline constexpr std::uint8_t kDone = 13;
inline constexpr std::uint8_t kFault = 14;

/// Inspect: Report. Pyramid: Picture..., Progress..., then the sheet as a tiled file of ours stands in `out`. Heights:
/// Progress..., then the model as a file of ours, in metres.
enum class Task : std::uint8_t { Inspect, Pyramid, Heights };

struct Order {
    Task task = Task::Inspect;
    std::filesystem::path file, out;        ///< `out` is a new file; empty for Inspect
    int picture = 0;                        ///< longest side of the first coarse picture; 0: none
    HeightUnit unit = HeightUnit::Unclear;  ///< of heights whose file does not say it
    std::string crs;                        ///< of a file that names none
    friend bool operator==(const Order&, const Order&) = default;
};

struct Progress {
    int done = 0, of = 1;
};

/// Some rows of the first coarse picture. They are sent as they are read: while one side reads the next ones, the other
/// takes these.
struct PictureRows {
    int columns = 0, rows = 0;  ///< of the whole picture
    int first = 0;
    std::vector<std::uint32_t> rgb;  ///< as in Pixels; whole rows
};

[[nodiscard]] worker::Record pack(const Order& order);
[[nodiscard]] worker::Record pack(const PictureRows& rows);
[[nodiscard]] worker::Record pack(Progress progress);
/// Names, kinds and values of the arguments as they are; texts cut to what a line can hold.
[[nodiscard]] worker::Record pack(const Error& error);

/// Each gives worker/garbled for a record that is none.
[[nodiscard]] Result<Order> unpackOrder(const worker::Record& record);
[[nodiscard]] Result<PictureRows> unpackPicture(const worker::Record& record);
[[nodiscard]] Result<Progress> unpackProgress(const worker::Record& record);
/// The error that the reader met; worker/garbled for one that is none of the reader's.
[[nodiscard]] Error unpackFault(const worker::Record& record);

}  // namespace crosstick::sheets::messages
