#pragma once

#include "ui/march/typed_table.h"

namespace crosstick::march {

/// Who we are: elements with their strength and call sign, and under whom each stands in each phase.
class ElementsTable final : public TypedTable {
    Q_OBJECT

  public:
    enum Field { Unit, Name, CallSign, People, kOwn };  ///< then a phase each

    explicit ElementsTable(work::Work& work, QObject* parent = nullptr) : TypedTable(work, parent) {}
    int add(int after) override;
    void takeOut(int row) override;
    [[nodiscard]] QStringList choices(int row, int field) const override;

  protected:
    int read() override;
    [[nodiscard]] std::vector<Head> headsNow() const override;
    [[nodiscard]] QString cell(int row, int field) const override;
    [[nodiscard]] bool isTyped(int row, int field) const override;
    [[nodiscard]] Result<plan::Force> typed(int row, int field, const std::string& words) const override;

  private:
    [[nodiscard]] const plan::Element& element(int row) const { return force_.elements[static_cast<std::size_t>(row)]; }
    [[nodiscard]] int phaseOf(int field) const;
};

/// What each element is to do in one phase.
class TasksTable final : public TypedTable {
    Q_OBJECT

  public:
    enum Field { Name, What, Purpose, Place, Trigger, CodeWord, Under, kFields };

    explicit TasksTable(work::Work& work, QObject* parent = nullptr) : TypedTable(work, parent) {}
    /// The phase that is shown; 0: the first of the plan.
    void setPhase(int number);
    [[nodiscard]] int phase() const;
    int add(int after) override;
    void takeOut(int row) override;  ///< the task, not its element
    [[nodiscard]] QStringList choices(int row, int field) const override;

  protected:
    int read() override;
    [[nodiscard]] std::vector<Head> headsNow() const override;
    [[nodiscard]] QString cell(int row, int field) const override;
    [[nodiscard]] bool isTyped(int row, int field) const override;
    [[nodiscard]] Result<plan::Force> typed(int row, int field, const std::string& words) const override;

  private:
    int phase_ = 0;
    [[nodiscard]] plan::Task task(int row) const;  ///< an empty one where there is none
};

}  // namespace crosstick::march
