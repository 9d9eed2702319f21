#pragma once

#include <functional>

#include <QGridLayout>
#include <QLabel>
#include <QScrollArea>

#include "ui/look/theme.h"
#include "ui/settings/choices.h"

namespace crosstick::settings {

/// One page with every choice: what it is, what it is now, what it is by default and why so. A choice holds at once.
class SettingsPage final : public QScrollArea {
    Q_OBJECT

  public:
    /// @param file  in which the choices are kept, as the page says
    explicit SettingsPage(const QString& file, QWidget* parent = nullptr);
    void setLight(look::Light light);
    void show(const Choices& choices);
    [[nodiscard]] const Choices& choices() const { return choices_; }
    /// Why what was typed last cannot be; empty where it can.
    [[nodiscard]] QString refusal() const;

  Q_SIGNALS:
    void changed(const crosstick::settings::Choices& choices);
    void left();

  protected:
    void keyPressEvent(QKeyEvent* event) override;
    void paintEvent(QPaintEvent* event) override;

  private:
    look::Light light_ = look::Light::Day;
    Choices choices_;
    bool isFilling_ = false;
    QWidget* body_;
    QGridLayout* rows_;
    std::vector<QLabel*> refusals_, sources_;
    std::vector<std::function<void()>> refills_;  ///< each shows one choice as it is now

    void fill();
    void fillDrawing();
    void addRow(const QString& what, QWidget* control, const QString& source);
    void addTyped(const QString& what, const QString& source, std::function<QString(const Choices&)> shown,
                  std::function<QString(Choices&, const QString& typed)> take);
    void addChosen(const QString& what, const QString& source, const QStringList& names,
                   std::function<int(const Choices&)> shown, std::function<void(Choices&, int)> take);
    void addCounted(const QString& what, const QString& source, int least, int most, int Choices::*member);
    void change(const std::function<void(Choices&)>& does);
    void renew();
};

}  // namespace crosstick::settings
