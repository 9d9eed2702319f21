#pragma once

#include <vector>

#include <QAbstractTableModel>

#include "ui/work/work.h"

namespace crosstick::march {

/// A table of the force that is typed over: every change is an edit of the plan, which all that names the same reads.
class TypedTable : public QAbstractTableModel {
    Q_OBJECT

  public:
    struct Head {
        QString words;
        int wide = 90;
        bool isNumber = false;
    };

    explicit TypedTable(work::Work& work, QObject* parent) : QAbstractTableModel(parent), work_(work) {}

    void renew();
    /// A new row after one, or at the end. Gives its number.
    virtual int add(int after) = 0;
    virtual void takeOut(int row) = 0;
    /// What may be typed into a cell, to choose from; nothing where anything may.
    [[nodiscard]] virtual QStringList choices(int row, int field) const;
    [[nodiscard]] const std::vector<Head>& heads() const { return heads_; }

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
    [[nodiscard]] Qt::ItemFlags flags(const QModelIndex& index) const override;
    bool setData(const QModelIndex& index, const QVariant& value, int role) override;

  Q_SIGNALS:
    void refused(const crosstick::Error& why);
    void taken();  ///< what was typed is in the plan

  protected:
    /// What the table is of, read anew from the plan. Gives the number of rows.
    virtual int read() = 0;
    [[nodiscard]] virtual std::vector<Head> headsNow() const = 0;
    [[nodiscard]] virtual QString cell(int row, int field) const = 0;
    [[nodiscard]] virtual QString toType(int row, int field) const { return cell(row, field); }
    [[nodiscard]] virtual QString hint(int row, int field) const;
    [[nodiscard]] virtual bool isTyped(int row, int field) const = 0;
    [[nodiscard]] virtual Result<plan::Force> typed(int row, int field, const std::string& words) const = 0;
    void commit(plan::Force force, const char* caption);

    work::Work& work_;
    plan::Force force_;  ///< as the plan has it

  private:
    std::vector<Head> heads_;
    int rows_ = 0;
};

/// An element by its name or call sign, in any case of letters; nothing for nothing.
/// Errors: march/no-such-element with "typed" and "known".
[[nodiscard]] Result<std::optional<Uuid>> elementTyped(const plan::Force& force, const std::string& typed);
[[nodiscard]] QString nameOf(const plan::Force& force, const std::optional<Uuid>& element);
[[nodiscard]] QStringList elementNames(const plan::Force& force);

}  // namespace crosstick::march
