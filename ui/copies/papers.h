#pragma once

#include <map>
#include <set>
#include <string>
#include <vector>

#include <QComboBox>
#include <QPushButton>
#include <QWidget>

namespace crosstick::copies {

/// Papers that go with the films.
enum class Paper { Card, March, Checklist, Matrix };

/// A column that a paper can have.
struct ColumnName {
    std::string key, head;
};

/// Which papers are made, in which form, and which of their columns are left out.
struct PaperWish {
    enum class Cards { A5, A6, Table };
    Cards cards = Cards::A5;
    std::set<Paper> beside;  ///< the cards, that are always made
    std::map<Paper, std::set<std::string>> without;
};

/// Chooses them: the size of the cards, the papers beside them, and the columns of the paper that is looked at.
class PapersChoice final : public QWidget {
    Q_OBJECT

  public:
    explicit PapersChoice(QWidget* parent);
    [[nodiscard]] const PaperWish& wish() const { return wish_; }
    /// The paper of the page that is looked at, with all columns it can have; none where they cannot be chosen.
    void lookAt(Paper paper, const std::vector<ColumnName>& columns);
    void lookAtFilm();
    [[nodiscard]] QComboBox* cards() const { return cards_; }
    [[nodiscard]] QPushButton* button(Paper paper) const { return buttons_.at(paper); }
    [[nodiscard]] QPushButton* columns() const { return columns_; }

  Q_SIGNALS:
    void changed();

  private:
    PaperWish wish_;
    QComboBox* cards_;
    QPushButton* columns_;
    std::map<Paper, QPushButton*> buttons_;
};

}  // namespace crosstick::copies
