#pragma once

#include <functional>
#include <vector>

#include "ui/look/field.h"

class QVBoxLayout;

namespace crosstick::timing {

/// A list in which every line is a field, and the last one adds. A field that is emptied takes its line out.
class ListedFields final : public QWidget {
    Q_OBJECT

  public:
    /// Takes what was typed in a place; the place at the end adds.
    using Take = std::function<std::optional<QString>(std::size_t place, const QString& typed)>;
    struct Line {
        QString value, told;
    };

    /// @param name  of a line, told to a screen reader; @param example  of what the last one takes
    ListedFields(const QString& title, QString name, const QString& example, Take take, QWidget* parent);
    void setLight(look::Light light);
    void show(const std::vector<Line>& lines);
    [[nodiscard]] look::Field* adding() const { return adding_; }

  Q_SIGNALS:
    void left();

  private:
    QString name_;
    Take take_;
    look::Light light_ = look::Light::Day;
    QVBoxLayout* rows_;
    std::vector<look::Field*> fields_;
    look::Field* adding_;
    std::size_t count_ = 0;

    void grow();
};

}  // namespace crosstick::timing
