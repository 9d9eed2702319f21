#pragma once

#include <memory>
#include <vector>

#include "ui/work/sheet_ground.h"

namespace crosstick::work {

/// The map sheets of a plan, each as far as it can be shown. One that stays in the plan keeps what was read of it.
class SheetGrounds final : public QObject {
    Q_OBJECT

  public:
    SheetGrounds(Errands& errands, const sheets::ForeignReader& reader);

    /// @param finder  asked on another thread for the file that can be read
    void lay(const std::vector<plan::SheetPtr>& sheets, const std::filesystem::path& folder,
             const sheets::FileFinder& finder);
    /// Reads once more what could not be read: something may have been mended.
    void layFaultyAgain();
    /// The copy of a sheet cannot be read. @param place  of the sheet in the plan
    void copyIsDamaged(std::size_t place);

    [[nodiscard]] const SheetGround* of(const plan::SheetId& sheet) const;  ///< null for one that is not laid
    [[nodiscard]] const SheetGround* first() const;                         ///< null where there is none
    [[nodiscard]] bool isReading() const;
    [[nodiscard]] bool hasFault() const;

  Q_SIGNALS:
    void changed();

  private:
    struct Laid {
        plan::SheetId sheet;
        std::unique_ptr<SheetGround> ground;
    };
    Errands& errands_;
    const sheets::ForeignReader& reader_;
    std::vector<Laid> laid_;  ///< in the plan's order

    [[nodiscard]] std::unique_ptr<SheetGround> takeOut(const plan::SheetId& sheet);
};

}  // namespace crosstick::work
