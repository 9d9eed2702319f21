#pragma once

#include <functional>
#include <vector>

#include <QAction>
#include <QLineEdit>
#include <QListWidget>
#include <QPointer>
#include <QWidget>

#include "ui/look/theme.h"

class QMenuBar;

namespace crosstick::window {

/// Something that can be done, as the list of all of it names it.
struct Doing {
    QPointer<QAction> action;
    QString words;  ///< without marks of the menu
    QString where;  ///< menus that lead to it: "Draw, Lines"
};
/// Everything in a row of menus, from the first menu to the last, each once; menus that fill themselves when they open
/// are filled.
[[nodiscard]] std::vector<Doing> doingsOf(const QList<QAction*>& menus);
/// Does it answer to what was typed? Each word of that has to stand in its words, its menus, its key or its help.
[[nodiscard]] bool answers(const Doing& doing, const QString& typed);

/// The card "What can I do": every action with its key; typing sifts them, Enter does the chosen one.
class ActionsCard final : public QWidget {
    Q_OBJECT

  public:
    explicit ActionsCard(std::function<std::vector<Doing>()> all, QWidget* parent = nullptr);
    void setLight(look::Light light);
    void open();  ///< anew, the caret where it is typed
    [[nodiscard]] QLineEdit* field() const { return field_; }
    [[nodiscard]] QListWidget* list() const { return list_; }

  Q_SIGNALS:
    void left();                   ///< back to the table
    void chosen(QAction* action);  ///< to be done

  protected:
    bool eventFilter(QObject* watched, QEvent* event) override;
    void paintEvent(QPaintEvent* event) override;

  private:
    std::function<std::vector<Doing>()> all_;
    std::vector<Doing> doings_;
    look::Light light_ = look::Light::Day;
    QLineEdit* field_;
    QListWidget* list_;

    void sift();
    void choose();
};

}  // namespace crosstick::window
