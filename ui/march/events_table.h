#pragma once

#include "core/movement/checklist.h"
#include "ui/march/typed_table.h"

namespace crosstick::march {

/// What is reported, with its times: planned by the march table of a route or fixed, reported, and as it was, which
/// moves what follows.
class EventsTable final : public TypedTable {
    Q_OBJECT

  public:
    enum Field { What, Place, Route, Man, Whose, Planned, Expected, CodeWord, Reporter, Reported, Actual, kFields };

    explicit EventsTable(work::Work& work, QObject* parent = nullptr) : TypedTable(work, parent) {}
    int add(int after) override;
    void takeOut(int row) override;
    [[nodiscard]] QStringList choices(int row, int field) const override;

  protected:
    int read() override;
    [[nodiscard]] std::vector<Head> headsNow() const override;
    [[nodiscard]] QString cell(int row, int field) const override;
    [[nodiscard]] QString toType(int row, int field) const override;
    [[nodiscard]] QString hint(int row, int field) const override;
    [[nodiscard]] bool isTyped(int row, int field) const override;
    [[nodiscard]] Result<plan::Force> typed(int row, int field, const std::string& words) const override;

  private:
    std::vector<movement::MarchTable> tables_;
    std::vector<movement::ChecklistRow> rows_;

    [[nodiscard]] const movement::ChecklistRow& row(int n) const { return rows_[static_cast<std::size_t>(n)]; }
    [[nodiscard]] std::optional<Instant> timeAt(int n, int field) const;
    /// The route on whose way a place lies: the ledger's first.
    [[nodiscard]] std::optional<plan::ItemId> routeOver(const plan::ItemId& place) const;
    [[nodiscard]] Result<plan::Event> withPlace(plan::Event event, const std::string& words) const;
    [[nodiscard]] Result<plan::Event> withRoute(plan::Event event, const std::string& words) const;
    [[nodiscard]] Result<plan::Event> withTime(plan::Event event, int n, int field, const std::string& words) const;
    [[nodiscard]] Result<plan::Event> typedEvent(int n, int field, const std::string& words) const;
};

}  // namespace crosstick::march
