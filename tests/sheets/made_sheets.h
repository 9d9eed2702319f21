#pragma once

#include <array>
#include <cstdint>
#include <filesystem>
#include <functional>
#include <string>
#include <vector>

class GDALDataset;

namespace crosstick::testing {

/// A folder of a test's own, gone when the test is.
class Folder {
  public:
    Folder();
    ~Folder();
    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;
    [[nodiscard]] std::filesystem::path operator/(const char* name) const { return path_ / name; }

  private:
    std::filesystem::path path_;
};

enum class Depth { Byte, UInt16, Int16, Float };

/// What a made sheet is to be.
struct Recipe {
    int columns = 64, rows = 48, bands = 1;
    Depth depth = Depth::Byte;
    std::string crs = "EPSG:32625";
    std::array<double, 6> placement{648125, 2.5, 0, 5106000, 0, -2.5};
    std::vector<std::string> options{};                            ///< of the driver: "TILED=YES"
    std::function<double(int column, int row, int band)> value{};  ///< zero everywhere where none is given
    std::function<void(GDALDataset&)> touch{};                     ///< before the pixels are written
    std::string heightUnit = "m";                                  ///< of a band that is no byte
};

void makeSheet(const std::filesystem::path& file, const Recipe& recipe);
void writeText(const std::filesystem::path& file, const std::string& text);

}  // namespace crosstick::testing
