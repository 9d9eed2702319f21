#pragma once

#include <memory>

namespace crosstick::testing {

enum class Trouble {
    Once,    ///< one call fails, the ones after it succeed
    ForGood  ///< that call and every one after it fail, as when the disk is gone
};

/// Stands between SQLite and its files while it lives: of the calls that change a file (write, sync, truncate, delete)
/// the n-th fails. Databases opened before or after it are not touched by it.
class FailingDisk {
  public:
    FailingDisk(int nth, Trouble trouble);
    ~FailingDisk();
    FailingDisk(const FailingDisk&) = delete;
    FailingDisk& operator=(const FailingDisk&) = delete;
    FailingDisk(FailingDisk&&) = delete;
    FailingDisk& operator=(FailingDisk&&) = delete;

    /// Whether the n-th call has come.
    [[nodiscard]] bool hasFailed() const;

  private:
    struct Disk;
    std::unique_ptr<Disk> disk_;
};

}  // namespace crosstick::testing
