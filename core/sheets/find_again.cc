#include "core/sheets/find_again.h"

#include <set>

#include "core/sheets/sheet_file.h"

namespace crosstick::sheets {
namespace {

namespace fs = std::filesystem;
constexpr int kDeepest = 3;
constexpr int kMostFiles = 20000;

bool isHidden(const fs::path& path) {
    return path.filename().string().starts_with('.');
}

/// One folder's search: what the same size has is read for its checksum.
class Search {
  public:
    Search(const plan::Sheet& sheet, const worker::IsStopped& isStopped) : sheet_(sheet), isStopped_(isStopped) {}

    fs::path in(const fs::path& folder) {
        std::error_code fault;
        const auto whole = fs::weakly_canonical(folder, fault);
        if (!seen_.insert(whole).second) {
            return {};
        }
        fs::recursive_directory_iterator at(folder, fs::directory_options::skip_permission_denied, fault);
        for (; !fault && at != fs::recursive_directory_iterator(); at.increment(fault)) {
            if (++looked_ > kMostFiles || (isStopped_ && isStopped_())) {
                return {};
            }
            if (at->is_directory(fault) && (at.depth() >= kDeepest || isHidden(at->path()) || at->is_symlink(fault))) {
                at.disable_recursion_pending();
            } else if (isIt(*at)) {
                return at->path();
            }
        }
        return {};
    }

  private:
    const plan::Sheet& sheet_;
    const worker::IsStopped& isStopped_;
    std::set<fs::path> seen_;
    int looked_ = 0;

    [[nodiscard]] bool isIt(const fs::directory_entry& entry) const {
        std::error_code fault;
        if (!entry.is_regular_file(fault) || static_cast<std::int64_t>(entry.file_size(fault)) != sheet_.bytes) {
            return false;
        }
        const auto sum = fileSha256(entry.path());
        return sum && *sum == sheet_.sha256;
    }
};

}  // namespace

fs::path findAgain(const plan::Sheet& sheet, const std::vector<fs::path>& folders, const worker::IsStopped& isStopped) {
    Search search(sheet, isStopped);
    for (const fs::path& folder : folders) {
        if (auto found = search.in(folder); !found.empty()) {
            return found;
        }
    }
    return {};
}

}  // namespace crosstick::sheets
