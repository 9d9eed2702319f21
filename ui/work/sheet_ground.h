#pragma once

#include <filesystem>
#include <memory>
#include <optional>

#include <QObject>

#include "core/plan/sheet.h"
#include "core/sheets/plan_ground.h"
#include "ui/work/errands.h"

namespace crosstick::work {

/// The map sheet as the table may show it: first the whole at a glance, then our copy of it, made by the reader while
/// the work goes on. Lives on the window's thread.
class SheetGround final : public QObject {
    Q_OBJECT

  public:
    SheetGround(Errands& errands, const sheets::ForeignReader& reader);

    /// @param sheet  that is to be shown; null: none. One that is there or on its way already is left alone.
    /// @param finder  asked on another thread for the file that can be read
    void lay(const plan::SheetPtr& sheet, const std::filesystem::path& folder, sheets::FileFinder finder);
    /// Reads the sheet once more: something may have been mended.
    void layAgain();
    /// Our copy cannot be read: it is thrown away and made anew, once; a second time is a fault of the sheet.
    void copyIsDamaged();

    [[nodiscard]] const std::filesystem::path& file() const { return file_; }
    [[nodiscard]] const std::filesystem::path& copy() const { return copy_; }  ///< empty until it is there
    [[nodiscard]] const std::shared_ptr<const sheets::Pixels>& glance() const { return glance_; }
    [[nodiscard]] const std::optional<Error>& fault() const { return fault_; }
    [[nodiscard]] bool isReading() const { return reads_; }

  Q_SIGNALS:
    void changed();

  private:
    Errands& errands_;
    const sheets::ForeignReader& reader_;
    std::filesystem::path file_, copy_;
    std::filesystem::path spoilt_;  ///< a copy to be thrown away before the next is made
    std::string path_;              ///< as the plan names it
    sheets::FileFinder finder_;
    int columns_ = 0, rows_ = 0;
    std::shared_ptr<const sheets::Pixels> glance_;
    std::optional<Error> fault_;
    bool reads_ = false, threwAway_ = false;
    int round_ = 0;

    void read();
    void take(Result<std::filesystem::path> copy);
};

}  // namespace crosstick::work
