#pragma once

#include <filesystem>

#include <QComboBox>
#include <QLabel>
#include <QToolButton>
#include <QWidget>

#include "core/measures/unit_words.h"
#include "ui/look/theme.h"
#include "ui/press/faces.h"

namespace crosstick::details {

/// The symbol as it will be drawn, by the function that draws it on films, at twice its true size.
class UnitPicture final : public QWidget {
    Q_OBJECT

  public:
    UnitPicture(const press::Faces* faces, const look::Light& light, QWidget* parent);
    void show(const measures::UnitSymbol& unit);

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    const press::Faces* faces_;
    const look::Light& light_;
    measures::UnitSymbol unit_;
};

/// Side, size and icon to choose from beside the words that are typed: either changes the other, and the picture shows
/// what comes of it.
class UnitPicker final : public QWidget {
    Q_OBJECT

  public:
    UnitPicker(const press::Faces* faces, const look::Light& light, QWidget* parent);
    void show(const QString& words);
    [[nodiscard]] QComboBox* side() const { return side_; }
    [[nodiscard]] QComboBox* size() const { return size_; }
    [[nodiscard]] QComboBox* icon() const { return icon_; }

  Q_SIGNALS:
    void picked(const QString& words);

  private:
    QComboBox *side_, *size_, *icon_;
    QToolButton* hq_;
    QLabel* unread_;
    UnitPicture* picture_;
    measures::UnitSymbol unit_;

    void pick();
};

}  // namespace crosstick::details
