// Turns the coefficients as text (wmm2025.txt) into the two files that GeographicLib reads: wmm2025.wmm, which
// describes the model, and wmm2025.wmm.cof, which holds the numbers. Run by the build: make_magnetic_model wmm2025.txt
// FOLDER

#include <array>
#include <bit>
#include <cstdint>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <optional>
#include <sstream>
#include <string>
#include <vector>

namespace {

constexpr std::size_t kDegree = 12;
constexpr std::size_t kRows = kDegree * (kDegree + 3) / 2;  // of degrees 1 to 12: 90
constexpr const char* kIdentity = "WMM2025A";               // eight letters, in both files

struct Row {
    std::size_t n = 0, m = 0;
    double g = 0, h = 0, gRate = 0, hRate = 0;
};

/// One part of the field (the main field or its yearly change) by degree and order.
struct Part {
    std::array<std::array<double, kDegree + 1>, kDegree + 1> g{}, h{};
};

std::optional<std::vector<Row>> readRows(std::istream& in) {
    std::vector<Row> rows;
    std::string line;
    while (std::getline(in, line)) {
        if (line.empty() || line[0] == '#') {
            continue;
        }
        std::istringstream fields(line);
        Row row;
        if (!(fields >> row.n >> row.m >> row.g >> row.h >> row.gRate >> row.hRate) || row.n > kDegree ||
            row.m > row.n) {
            std::fprintf(stderr, "make_magnetic_model: cannot read the row \"%s\"\n", line.c_str());
            return std::nullopt;
        }
        rows.push_back(row);
    }
    if (rows.size() != kRows) {
        std::fprintf(stderr, "make_magnetic_model: %zu rows instead of %zu\n", rows.size(), kRows);
        return std::nullopt;
    }
    return rows;
}

/// Little endian whatever the machine.
template <class Bits>
void putBits(std::ostream& out, Bits bits) {
    for (std::size_t byte = 0; byte < sizeof bits; ++byte) {
        out.put(static_cast<char>((bits >> (8 * byte)) & 0xFFU));
    }
}

void putNumber(std::ostream& out, double value) {
    putBits(out, std::bit_cast<std::uint64_t>(value));
}

/// Degree and order, then g by order and degree from order 0, then h likewise from order 1.
void putPart(std::ostream& out, const Part& part) {
    putBits(out, std::uint32_t{kDegree});
    putBits(out, std::uint32_t{kDegree});
    for (std::size_t m = 0; m <= kDegree; ++m) {
        for (std::size_t n = m; n <= kDegree; ++n) {
            putNumber(out, part.g[n][m]);
        }
    }
    for (std::size_t m = 1; m <= kDegree; ++m) {
        for (std::size_t n = m; n <= kDegree; ++n) {
            putNumber(out, part.h[n][m]);
        }
    }
}

void putDescription(std::ostream& out) {
    out << "WMMF-1\n"
        << "# Made from wmm2025.txt (NOAA/NCEI and BGS) by the build.\n"
        << "Name wmm2025\n"
        << "Description World Magnetic Model 2025\n"
        << "ReleaseDate 2024-11-13\n"
        << "Radius 6371200\n"
        << "Type Linear\n"
        << "Epoch 2025\n"
        << "MinTime 2025\n"
        << "MaxTime 2030\n"
        << "MinHeight -1000\n"
        << "MaxHeight 850000\n"
        << "Normalization Schmidt\n"
        << "ByteOrder Little\n"
        << "ID " << kIdentity << '\n';
}

bool write(const std::vector<Row>& rows, const std::filesystem::path& folder) {
    Part field;
    Part change;
    for (const Row& row : rows) {
        field.g[row.n][row.m] = row.g;
        field.h[row.n][row.m] = row.h;
        change.g[row.n][row.m] = row.gRate;
        change.h[row.n][row.m] = row.hRate;
    }
    std::error_code ignored;
    std::filesystem::create_directories(folder, ignored);
    std::ofstream description(folder / "wmm2025.wmm", std::ios::binary);
    putDescription(description);
    std::ofstream numbers(folder / "wmm2025.wmm.cof", std::ios::binary);
    numbers << kIdentity;
    putPart(numbers, field);
    putPart(numbers, change);
    return description.flush().good() && numbers.flush().good();
}

}  // namespace

int main(int argc, char** argv) {
    const std::vector<std::string> arguments(argv, argv + argc);
    if (arguments.size() != 3) {
        std::fputs("use: make_magnetic_model wmm2025.txt FOLDER\n", stderr);
        return 2;
    }
    std::ifstream in(arguments[1]);
    const auto rows = readRows(in);
    if (!rows) {
        return 1;
    }
    if (!write(*rows, arguments[2])) {
        std::fprintf(stderr, "make_magnetic_model: cannot write into %s\n", arguments[2].c_str());
        return 1;
    }
    return 0;
}
