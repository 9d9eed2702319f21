#include "ui/march/column_model.h"

#include <algorithm>

#include "core/movement/elements_said.h"
#include "core/units/number_text.h"
#include "ui/march/faults.h"

namespace crosstick::march {
namespace {

constexpr double kLongestGap = 10'000;
constexpr double kMostFiles = 8;

QString text(std::string_view utf8) {
    return QString::fromUtf8(utf8.data(), static_cast<qsizetype>(utf8.size()));
}

/// To a decimetre, and no more figures than are said.
QString metres(Metres length) {
    return QString::number(std::round(length.value() * 10) / 10);
}

Result<Metres> gapOf(const std::string& typed) {
    const auto number = parseNumber(typed);
    if (!number || *number < 0 || *number > kLongestGap) {
        return fail(kBadGap, {{"typed", typed}});
    }
    return Metres(*number);
}

bool isWhole(double number) {
    return number == std::floor(number);
}

}  // namespace

ColumnModel::ColumnModel(work::Work& work, QObject* parent) : QAbstractTableModel(parent), work_(work) {}

void ColumnModel::show(const std::string& column) {
    if (name_ != column) {  // other rows altogether
        beginResetModel();
        name_ = column;
        force_ = {};
        figures_ = {};
        endResetModel();
    }
    renew();
}

void ColumnModel::renew() {
    const plan::Force& now = work_.isOpen() ? work_.plan().force() : plan::Force{};
    const int rows = rowCount();
    plan::Force next = now;
    const plan::Column* column = next.columnNamed(name_);
    const int after = column == nullptr ? 0 : static_cast<int>(column->serials.size());
    movement::ColumnFigures figures =
        column == nullptr ? movement::ColumnFigures{} : movement::columnFigures(next, *column);
    if (after != rows) {  // an editor that is open in a cell stays where the rows stay
        beginResetModel();
    }
    force_ = std::move(next);
    figures_ = std::move(figures);
    if (after != rows) {
        endResetModel();
    } else if (rows > 0) {
        Q_EMIT dataChanged(index(0, 0), index(rows - 1, kFields - 1));
    }
}

const plan::Column* ColumnModel::column() const {
    return force_.columnNamed(name_);
}

plan::Column* ColumnModel::columnIn(plan::Force& force) const {
    const plan::Column* found = force.columnNamed(name_);
    const auto same = std::find_if(force.columns.begin(), force.columns.end(),
                                   [&](const plan::Column& one) { return &one == found; });
    return same == force.columns.end() ? nullptr : &*same;
}

std::string ColumnModel::unitOf(int row) const {
    const plan::Column* shown = column();
    const plan::Element* element = shown == nullptr || row < 0 || row >= rowCount()
                                       ? nullptr
                                       : force_.element(shown->serials[static_cast<std::size_t>(row)].element);
    return element == nullptr ? std::string{} : element->unit;
}

void ColumnModel::commit(plan::Force force, const char* caption) {
    plan::PlanBuilder builder(work_.committed());
    builder.force(std::move(force));
    work_.commit(std::move(builder).build(), caption);
    renew();
    Q_EMIT taken();
}

/// The column of a force that is shown, made where there is none yet.
plan::Column& ColumnModel::columnToFill(plan::Force& force) const {
    if (plan::Column* column = columnIn(force)) {
        return *column;
    }
    plan::Column fresh;
    fresh.id = work_.newId();
    fresh.name = name_;
    force.columns.push_back(std::move(fresh));
    return force.columns.back();
}

int ColumnModel::add(int after) {
    const plan::Column* column = force_.columnNamed(name_);
    const std::size_t count = column == nullptr ? 0 : column->serials.size();
    return addSaid(after, QString::number(count + 1));
}

/// An element of the force that is called so and marches in no place of the column yet, else a new one.
Uuid ColumnModel::joining(plan::Element said, const plan::Column& column, plan::Force& force) const {
    const auto marches = [&](const plan::Element& one) {
        return std::any_of(column.serials.begin(), column.serials.end(),
                           [&](const plan::Serial& serial) { return serial.element == one.id; });
    };
    for (plan::Element& known : force.elements) {
        if (known.name == said.name && !marches(known)) {
            known.people = said.people > 0 ? said.people : known.people;
            return known.id;
        }
    }
    said.id = work_.newId();
    force.elements.push_back(std::move(said));
    return force.elements.back().id;
}

int ColumnModel::addSaid(int after, const QString& line) {
    const std::vector<plan::Element> said = movement::elementsSaid(line.toStdString());
    if (said.empty()) {
        return -1;
    }
    plan::Force force = force_;
    plan::Column& column = columnToFill(force);
    const std::size_t count = column.serials.size();
    std::size_t at = after < 0 ? count : std::min(count, static_cast<std::size_t>(after) + 1);
    for (const plan::Element& element : said) {
        plan::Serial serial;
        serial.element = joining(element, column, force);
        column.serials.insert(column.serials.begin() + static_cast<std::ptrdiff_t>(at++), std::move(serial));
    }
    commit(std::move(force), said.size() == 1 ? "add an element" : "add elements");
    return static_cast<int>(at) - 1;
}

void ColumnModel::takeOut(int row) {
    plan::Force force = force_;
    plan::Column* column = columnIn(force);
    if (column == nullptr || row < 0 || row >= rowCount()) {
        return;
    }
    const auto at = column->serials.begin() + row;
    const Uuid gone = at->element;
    column->serials.erase(at);
    const bool marchesElsewhere =
        std::any_of(force.columns.begin(), force.columns.end(), [&](const plan::Column& other) {
            return std::any_of(other.serials.begin(), other.serials.end(),
                               [&](const plan::Serial& serial) { return serial.element == gone; });
        });
    const bool isTasked = std::any_of(force.tasks.begin(), force.tasks.end(),
                                      [&](const plan::Task& task) { return task.element == gone; });
    if (!marchesElsewhere && !isTasked) {
        std::erase_if(force.elements, [&](const plan::Element& element) { return element.id == gone; });
    }
    commit(std::move(force), "take out an element");
}

int ColumnModel::move(int row, int by) {
    plan::Force force = force_;
    plan::Column* column = columnIn(force);
    const int to = row + by;
    if (column == nullptr || row < 0 || to < 0 || row >= rowCount() || to >= rowCount()) {
        return row;
    }
    std::swap(column->serials[static_cast<std::size_t>(row)], column->serials[static_cast<std::size_t>(to)]);
    commit(std::move(force), "change the order of march");
    return to;
}

void ColumnModel::setName(const QString& typed) {
    plan::Force force = force_;
    if (plan::Column* column = columnIn(force); column != nullptr && column->name != typed.toStdString()) {
        column->name = typed.trimmed().toStdString();
        if (!name_.empty()) {
            name_ = column->name;
        }
        commit(std::move(force), "name a column");
    }
}

Result<void> ColumnModel::setFiles(const QString& typed) {
    const auto number = parseNumber(typed.trimmed().toStdString());
    if (!number || !isWhole(*number) || *number < 1 || *number > kMostFiles) {
        return fail(kBadFiles, {{"typed", typed.toStdString()}});
    }
    plan::Force force = force_;
    if (plan::Column* column = columnIn(force)) {
        column->files = static_cast<int>(*number);
        commit(std::move(force), "change the files of a column");
    }
    return {};
}

Result<void> ColumnModel::setApart(const QString& typed) {
    return gapOf(typed.trimmed().toStdString()).map([&](Metres apart) {
        plan::Force force = force_;
        if (plan::Column* column = columnIn(force)) {
            column->apart = apart;
            commit(std::move(force), "change the distance between people");
        }
    });
}

Result<void> ColumnModel::setInterval(const QString& typed) {
    return gapOf(typed.trimmed().toStdString()).map([&](Metres interval) {
        plan::Force force = force_;
        if (plan::Column* column = columnIn(force)) {
            column->interval = interval;
            commit(std::move(force), "change the intervals of a column");
        }
    });
}

int ColumnModel::rowCount(const QModelIndex& parent) const {
    const plan::Column* shown = parent.isValid() ? nullptr : column();
    return shown == nullptr ? 0 : static_cast<int>(shown->serials.size());
}

int ColumnModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : kFields;
}

QString ColumnModel::cell(int row, int field) const {
    const plan::Serial& serial = column()->serials[static_cast<std::size_t>(row)];
    const plan::Element* element = force_.element(serial.element);
    const movement::ElementFigures& figures = figures_.elements[static_cast<std::size_t>(row)];
    switch (field) {
        case Place:
            return QString::number(row + 1);
        case Unit:
            return element == nullptr ? QString() : text(element->unit);
        case Name:
            return element == nullptr ? tr("unknown") : text(element->name);
        case CallSign:
            return element == nullptr ? QString() : text(element->callSign);
        case People:
            return element == nullptr || element->people == 0 ? QString() : QString::number(element->people);
        case Role:
            return text(serial.role);
        case Behind:
            return row + 1 == rowCount() ? QString() : metres(figures.intervalBehind);
        case Length:
            return metres(figures.length);
        case Head:
            return metres(figures.headBehind);
        default:
            return {};
    }
}

QVariant ColumnModel::data(const QModelIndex& index, int role) const {
    if (!index.isValid() || index.row() >= rowCount()) {
        return {};
    }
    if (role == Qt::DisplayRole || role == Qt::EditRole) {
        return cell(index.row(), index.column());
    }
    if (role == Qt::TextAlignmentRole) {
        const bool isNumber = index.column() == Place || index.column() == People || index.column() >= Behind;
        return QVariant(Qt::AlignVCenter | (isNumber ? Qt::AlignRight : Qt::AlignLeft));
    }
    return {};
}

QVariant ColumnModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal) {
        return {};
    }
    if (role == Qt::TextAlignmentRole) {
        const bool isNumber = section == Place || section == People || section >= Behind;
        return QVariant(Qt::AlignVCenter | (isNumber ? Qt::AlignRight : Qt::AlignLeft));
    }
    if (role != Qt::DisplayRole) {
        return {};
    }
    switch (section) {
        case Place:
            return tr("No.");
        case Symbol:
            return tr("Symbol");
        case Unit:
            return tr("Unit, in words");
        case Name:
            return tr("Name");
        case CallSign:
            return tr("Call sign");
        case People:
            return tr("People");
        case Role:
            return tr("Role");
        case Behind:
            return tr("Behind it, m");
        case Length:
            return tr("Length, m");
        case Head:
            return tr("Head at, m");
        default:
            return {};
    }
}

Qt::ItemFlags ColumnModel::flags(const QModelIndex& index) const {
    const Qt::ItemFlags flags = QAbstractTableModel::flags(index);
    const bool isLast = index.row() + 1 == rowCount();
    const bool isTyped = index.column() >= Unit && (index.column() < Behind || (index.column() == Behind && !isLast));
    return isTyped ? flags | Qt::ItemIsEditable : flags;
}

Result<plan::Force> ColumnModel::typed(int row, int field, const std::string& words) const {
    plan::Force force = force_;
    plan::Serial& serial = columnIn(force)->serials[static_cast<std::size_t>(row)];
    const auto found = std::find_if(force.elements.begin(), force.elements.end(),
                                    [&](const plan::Element& element) { return element.id == serial.element; });
    if (field == Role) {
        serial.role = words;
        return force;
    }
    if (field == Behind) {
        if (words.empty()) {
            serial.behind.reset();
            return force;
        }
        return gapOf(words).map([&](Metres gap) {
            serial.behind = gap;
            return force;
        });
    }
    if (found == force.elements.end()) {
        return force;
    }
    if (field == People) {
        return strengthTyped(words).map([&](int people) {
            found->people = people;
            return force;
        });
    }
    (field == Unit ? found->unit : field == Name ? found->name : found->callSign) = words;
    return force;
}

bool ColumnModel::setData(const QModelIndex& index, const QVariant& value, int role) {
    if (role != Qt::EditRole || index.row() >= rowCount()) {
        return false;
    }
    const std::string words = value.toString().trimmed().toStdString();
    if (words == cell(index.row(), index.column()).toStdString()) {
        return true;
    }
    auto next = typed(index.row(), index.column(), words);
    if (!next) {
        Q_EMIT refused(next.error());
        return false;
    }
    commit(std::move(*next), "change an element");
    return true;
}

}  // namespace crosstick::march
