#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "core/plan/difference.h"

namespace crosstick::files {

/// Which file and which state of it a journal's edits belong to.
struct JournalBase {
    std::string file;        ///< the plan's path; empty for a plan never saved
    Uuid plan;               ///< the plan's identity
    std::int64_t saves = 0;  ///< of the file when the journal began; 0 for a plan never saved
    friend bool operator==(const JournalBase&, const JournalBase&) = default;
};

/// Every committed edit between two saves, written as it happens to a file of its own in the user's state folder. Each
/// record carries its length and checksum and is on the disk when add() returns. The process holds a lock on the file,
/// so that a second instance does not take a living one's journal for a crash. One thread at a time.
class Journal {
  public:
    /// Begins a new journal; the folder is made where it is missing. Errors: files/journal-unwritable.
    [[nodiscard]] static Result<Journal> begin(const std::filesystem::path& folder, const JournalBase& base);
    Journal(Journal&& other) noexcept;
    Journal& operator=(Journal&& other) noexcept;
    Journal(const Journal&) = delete;
    Journal& operator=(const Journal&) = delete;
    ~Journal();  ///< lets the lock go; the file stays until discard()

    [[nodiscard]] Result<void> add(const plan::Plan& before, const plan::Plan& after);
    /// A save of the plan as it is now begins; edits go on meanwhile. Where the save comes to pass the file will have
    /// been saved so often, and only what follows this mark is newer than it; where it fails everything still counts.
    [[nodiscard]] Result<void> mark(std::int64_t saves);
    /// After a save with nothing newer: empties the journal and ties it to the file's new state.
    [[nodiscard]] Result<void> restart(const JournalBase& base);
    /// The work is safe elsewhere: the journal goes.
    void discard() &&;
    [[nodiscard]] const std::filesystem::path& file() const { return file_; }

  private:
    Journal(std::filesystem::path file, int handle) : file_(std::move(file)), handle_(handle) {}
    std::filesystem::path file_;
    int handle_ = -1;
    [[nodiscard]] Result<void> append(const std::string& text) const;
};

/// A journal that nobody holds: its program ended without saving.
struct Leftover {
    std::filesystem::path journal;
    JournalBase base;
    std::size_t edits = 0;
};

/// All of them in a folder, in order of their names; unreadable files and living journals are passed over.
[[nodiscard]] std::vector<Leftover> leftovers(const std::filesystem::path& folder);

/// What came back.
struct Recovered {
    plan::Plan plan;
    std::size_t edits = 0;
    bool torn = false;  ///< the last record was cut off by the crash and left out
};

/// Replays a journal on the plan that its file holds (an empty plan for one never saved).
/// @param saves  how often that file has been saved
/// Errors: files/journal-damaged, files/journal-of-other-state where the file was saved after the journal began, other
/// than by a save that the journal marks.
[[nodiscard]] Result<Recovered> replay(const std::filesystem::path& journal, const plan::Plan& base,
                                       std::int64_t saves);

}  // namespace crosstick::files
