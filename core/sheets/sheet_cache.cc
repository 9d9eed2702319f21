#include "core/sheets/sheet_cache.h"

#include <algorithm>
#include <atomic>
#include <chrono>
#include <fstream>
#include <vector>

#include <unistd.h>

#include "core/sheets/faults.h"
#include "core/units/sha256.h"

namespace crosstick::sheets {
namespace {

namespace fs = std::filesystem;
constexpr std::streamoff kSample = std::streamoff{1} << 16;
constexpr std::string_view kUnfinished = ".part";
constexpr auto kForgotten = std::chrono::hours(24);  // after which an unfinished copy is nobody's any more

struct Copy {
    fs::path path;
    std::int64_t bytes = 0;
    fs::file_time_type used;
};

std::vector<Copy> copiesIn(const fs::path& folder, bool unfinished) {
    std::vector<Copy> copies;
    std::error_code ignored;
    for (const auto& entry : fs::recursive_directory_iterator(folder, ignored)) {
        if ((entry.path().extension() == kUnfinished) == unfinished && entry.is_regular_file(ignored)) {
            copies.push_back(
                {entry.path(), static_cast<std::int64_t>(entry.file_size(ignored)), entry.last_write_time(ignored)});
        }
    }
    return copies;
}

void addSample(Sha256Stream& stream, std::istream& in, std::streamoff from) {
    std::vector<char> bytes(static_cast<std::size_t>(kSample));
    in.clear();
    in.seekg(from);
    in.read(bytes.data(), kSample);
    stream.add({reinterpret_cast<const std::uint8_t*>(bytes.data()), static_cast<std::size_t>(in.gcount())});
}

std::string timeText(const fs::path& file) {
    std::error_code ignored;
    const auto time = fs::last_write_time(file, ignored);
    return ignored ? std::string{} : std::to_string(time.time_since_epoch().count());
}

}  // namespace

Result<std::string> SheetCache::nameFor(const fs::path& file, const std::string& what) {
    std::error_code fault;
    const auto bytes = fs::file_size(file, fault);
    std::ifstream in(file, std::ios::binary);
    if (fault || !in || !fs::is_regular_file(file, fault)) {
        return fail(kFileMissing, {{"file", file.string()}});
    }
    const std::string facts = what + '|' + std::to_string(bytes) + '|' + timeText(file) + '|' +
                              timeText(fs::path(file).replace_extension(".prj"));
    Sha256Stream stream;
    stream.add({reinterpret_cast<const std::uint8_t*>(facts.data()), facts.size()});
    addSample(stream, in, 0);
    addSample(stream, in, std::max<std::streamoff>(0, static_cast<std::streamoff>(bytes) - kSample));
    return hexText(std::move(stream).finish()).substr(0, 32);
}

fs::path SheetCache::find(const std::string& name) const {
    const fs::path copy = folder_ / (name + ".tif");
    std::error_code fault;
    if (!fs::is_regular_file(copy, fault)) {
        return {};
    }
    fs::last_write_time(copy, fs::file_time_type::clock::now(), fault);
    return copy;
}

Result<fs::path> SheetCache::place(const std::string& name) const {
    std::error_code fault;
    fs::create_directories(folder_, fault);
    if (fault) {
        return fail(kNoRoom, {{"file", folder_.string()}, {"why", fault.message()}});
    }
    for (const Copy& left : copiesIn(folder_, true)) {
        if (fs::file_time_type::clock::now() - left.used > kForgotten) {
            fs::remove(left.path, fault);
        }
    }
    static std::atomic<int> count = 0;
    const std::string own = '.' + std::to_string(::getpid()) + '-' + std::to_string(++count);
    return folder_ / (name + own + std::string(kUnfinished));
}

Result<fs::path> SheetCache::take(const fs::path& made, const std::string& name) const {
    const fs::path copy = folder_ / (name + ".tif");
    std::error_code fault;
    fs::rename(made, copy, fault);
    if (fault) {
        return fail(kNoRoom, {{"file", copy.string()}, {"why", fault.message()}});
    }
    drop(copy);
    return copy;
}

std::int64_t SheetCache::bytes() const {
    std::int64_t sum = 0;
    for (const Copy& copy : copiesIn(folder_, false)) {
        sum += copy.bytes;
    }
    return sum;
}

void SheetCache::drop(const fs::path& except) const {
    auto copies = copiesIn(folder_, false);
    std::sort(copies.begin(), copies.end(), [](const Copy& a, const Copy& b) { return a.used < b.used; });
    std::int64_t sum = bytes();
    for (const Copy& copy : copies) {
        if (sum <= mostBytes_) {
            return;
        }
        std::error_code fault;
        if (copy.path != except && fs::remove(copy.path, fault)) {
            sum -= copy.bytes;
        }
    }
}

}  // namespace crosstick::sheets
