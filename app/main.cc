#include <filesystem>
#include <iostream>
#include <random>

#include <CLI/CLI.hpp>
#include <unistd.h>

#include "app/program.h"
#include "app/user_folders.h"
#include "ui/settings/choices.h"

namespace {

/// The folder of the program itself, in the build tree and when installed.
std::filesystem::path ownFolder() {
    std::error_code ignored;
    return std::filesystem::read_symlink("/proc/self/exe", ignored).parent_path();
}

}  // namespace

int main(int argc, char** argv) {
    using namespace crosstick;
    const auto now = std::chrono::floor<std::chrono::seconds>(std::chrono::system_clock::now());
    std::random_device chance;
    const QSettings kept(QString::fromStdString((app::configFolder() / "window.ini").string()), QSettings::IniFormat);
    const std::int64_t room = std::int64_t{settings::read(kept).cacheGigabytes} << 30;
    const sheets::ForeignReader reader(ownFolder() / "crosstick-reader",
                                       sheets::SheetCache(app::cacheFolder() / "sheets", room));
    const auto share = ownFolder().parent_path() / "share" / "crosstick";
    const app::Surroundings surroundings{
        std::cin, std::cout, std::cerr, share, reader, now, (std::uint64_t{chance()} << 32) | chance()};
    return static_cast<int>(app::run({argv + 1, argv + argc}, surroundings));
}
