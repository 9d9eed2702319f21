#include "core/files/journal.h"

#include <algorithm>
#include <cerrno>
#include <fstream>
#include <sstream>
#include <system_error>

#include <fcntl.h>
#include <sys/file.h>
#include <unistd.h>

#include "core/files/faults.h"
#include "core/files/json_form.h"
#include "core/units/number_text.h"
#include "core/units/sha256.h"

namespace crosstick::files {
namespace {

constexpr std::string_view kFirstWord = "crosstick-journal 1\n";
constexpr std::size_t kLargest = std::size_t{512} << 20U;

// A record: length, blank, checksum, line end, JSON, line end. The first one says what the journal belongs to.
std::string record(const Json& json) {
    const std::string body = jsonText(json);
    return std::to_string(body.size()) + ' ' + hexText(sha256(body)) + '\n' + body + '\n';
}

Json baseJson(const JournalBase& base) {
    return {{"file", base.file}, {"plan", text(base.plan)}, {"saves", base.saves}};
}

/// Where a save began: so many edits were in it, and the file would have been saved so often.
struct Mark {
    std::int64_t saves = 0;
    std::size_t edits = 0;
};

struct Contents {
    JournalBase base;
    std::vector<Json> edits;
    std::vector<Mark> marks;
    bool torn = false;
};

constexpr const char* kMark = "saving";

/// How many of the edits a file holds already that was saved so often; nothing where it is of another state.
std::optional<std::size_t> heldBy(const Contents& contents, std::int64_t saves) {
    if (contents.base.saves == saves) {
        return 0;
    }
    // Of saves that failed their marks stand in front of the one that came to pass.
    const auto mark = std::find_if(contents.marks.rbegin(), contents.marks.rend(),
                                   [saves](const Mark& m) { return m.saves == saves; });
    return mark == contents.marks.rend() ? std::nullopt : std::optional(mark->edits);
}

/// Takes the first record off; nothing where it is cut off or its checksum is wrong.
std::optional<Json> takeRecord(std::string_view& rest) {
    const auto line = rest.substr(0, rest.find('\n'));
    const auto blank = line.find(' ');
    if (line.size() == rest.size() || blank == std::string_view::npos) {
        return std::nullopt;
    }
    const auto length = parseWhole(line.substr(0, blank));
    if (!length || *length < 0 || static_cast<std::size_t>(*length) + 1 > rest.size() - line.size() - 1) {
        return std::nullopt;
    }
    const auto body = rest.substr(line.size() + 1, static_cast<std::size_t>(*length));
    if (hexText(sha256(body)) != line.substr(blank + 1)) {
        return std::nullopt;
    }
    rest.remove_prefix(line.size() + 1 + body.size() + 1);
    auto json = parseJson(body);
    return json ? std::optional(std::move(*json)) : std::nullopt;
}

std::optional<Contents> contentsOf(const std::filesystem::path& file) {
    std::error_code fault;
    const auto size = std::filesystem::file_size(file, fault);
    if (fault || size > kLargest) {
        return std::nullopt;
    }
    std::ifstream in(file, std::ios::binary);
    std::ostringstream all;
    all << in.rdbuf();
    const std::string bytes = all.str();
    std::string_view rest = bytes;
    if (!rest.starts_with(kFirstWord)) {
        return std::nullopt;
    }
    rest.remove_prefix(kFirstWord.size());
    const auto head = takeRecord(rest);
    if (!head) {
        return std::nullopt;
    }
    FieldReader reader(*head, "journal");
    Contents contents;
    contents.base = {reader.text("file"), reader.id("plan").value_or(Uuid{}), reader.whole("saves").value_or(0)};
    if (reader.fault()) {
        return std::nullopt;
    }
    while (!rest.empty()) {
        auto edit = takeRecord(rest);
        if (!edit) {
            contents.torn = true;
            break;
        }
        if (const auto mark = edit->find(kMark); mark != edit->end()) {
            contents.marks.push_back(
                {mark->is_number_integer() ? mark->get<std::int64_t>() : 0, contents.edits.size()});
            continue;
        }
        contents.edits.push_back(std::move(*edit));
    }
    return contents;
}

bool isHeld(const std::filesystem::path& file) {
    const int handle = ::open(file.c_str(), O_RDONLY | O_CLOEXEC);
    if (handle < 0) {
        return true;
    }
    const bool held = ::flock(handle, LOCK_EX | LOCK_NB) != 0;
    ::close(handle);
    return held;
}

tl::unexpected<Error> unwritable(const std::filesystem::path& file) {
    return fail(kJournalUnwritable, {{"file", file.string()}, {"why", std::generic_category().message(errno)}});
}

}  // namespace

Result<Journal> Journal::begin(const std::filesystem::path& folder, const JournalBase& base) {
    std::error_code ignored;
    std::filesystem::create_directories(folder, ignored);
    for (int number = 1; number < 10000; ++number) {
        const auto file = folder / (text(base.plan) + "-" + std::to_string(number) + ".journal");
        const int handle = ::open(file.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0600);
        if (handle < 0 && errno == EEXIST) {
            continue;
        }
        if (handle < 0) {
            return unwritable(file);
        }
        ::flock(handle, LOCK_EX | LOCK_NB);
        Journal journal(file, handle);
        if (auto begun = journal.append(std::string(kFirstWord) + record(baseJson(base))); !begun) {
            return tl::unexpected(begun.error());
        }
        return journal;
    }
    return unwritable(folder);
}

Journal::Journal(Journal&& other) noexcept : file_(std::move(other.file_)), handle_(std::exchange(other.handle_, -1)) {}
Journal& Journal::operator=(Journal&& other) noexcept {
    std::swap(file_, other.file_);
    std::swap(handle_, other.handle_);
    return *this;
}
Journal::~Journal() {
    if (handle_ >= 0) {
        ::close(handle_);
    }
}

Result<void> Journal::append(const std::string& text) const {
    std::string_view rest = text;
    while (!rest.empty()) {
        const ssize_t written = ::write(handle_, rest.data(), rest.size());
        if (written < 0 && errno == EINTR) {
            continue;
        }
        if (written <= 0) {
            return unwritable(file_);
        }
        rest.remove_prefix(static_cast<std::size_t>(written));
    }
    if (::fdatasync(handle_) != 0) {
        return unwritable(file_);
    }
    return {};
}

Result<void> Journal::add(const plan::Plan& before, const plan::Plan& after) {
    return append(record(toJson(plan::difference(before, after))));
}

Result<void> Journal::mark(std::int64_t saves) {
    return append(record({{kMark, saves}}));
}

Result<void> Journal::restart(const JournalBase& base) {
    if (::ftruncate(handle_, 0) != 0 || ::lseek(handle_, 0, SEEK_SET) != 0) {
        return unwritable(file_);
    }
    return append(std::string(kFirstWord) + record(baseJson(base)));
}

void Journal::discard() && {
    std::error_code ignored;
    std::filesystem::remove(file_, ignored);
}

std::vector<Leftover> leftovers(const std::filesystem::path& folder) {
    std::vector<Leftover> found;
    std::error_code ignored;
    for (const auto& entry : std::filesystem::directory_iterator(folder, ignored)) {
        if (entry.path().extension() != ".journal" || isHeld(entry.path())) {
            continue;
        }
        if (const auto contents = contentsOf(entry.path())) {
            found.push_back({entry.path(), contents->base, contents->edits.size()});
        }
    }
    std::sort(found.begin(), found.end(), [](const Leftover& a, const Leftover& b) { return a.journal < b.journal; });
    return found;
}

Result<Recovered> replay(const std::filesystem::path& journal, const plan::Plan& base, std::int64_t saves) {
    const auto contents = contentsOf(journal);
    if (!contents) {
        return fail(kJournalDamaged, {{"file", journal.string()}});
    }
    const auto held = heldBy(*contents, saves);
    if (!held) {
        return fail(kJournalOfOtherState, {{"file", contents->base.file}, {"journal", journal.string()}});
    }
    Recovered recovered{base, 0, contents->torn};
    for (std::size_t n = *held; n < contents->edits.size(); ++n) {
        const auto difference = differenceFrom(contents->edits[n]);
        if (!difference) {
            return fail(kJournalDamaged, {{"file", journal.string()}});
        }
        recovered.plan = plan::apply(recovered.plan, *difference);
        ++recovered.edits;
    }
    return recovered;
}

}  // namespace crosstick::files
