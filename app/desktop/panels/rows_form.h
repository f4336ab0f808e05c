#pragma once

#include <QWidget>

#include "app/desktop/panels/number_rows.h"

class QLabel;
class QPushButton;
class QTableView;

namespace drapewright::desktop {

/// A table of typed numbers with what can be done to its rows. Typing starts a cell, Tab goes on to
/// the next, Delete takes the chosen row out, Space ticks.
class RowsForm : public QWidget {
  Q_OBJECT

 public:
  struct Words {
    QString name;   ///< of the widgets: "undermining"
    QString title;  ///< "Undermining"
    QString what;   ///< one row: "undermined range"
    QString empty;  ///< said while there is no row
  };
  RowsForm(const Words& words, std::vector<NumberColumn> columns, QWidget* parent);

  /// @param remarks  one sentence for each row, said while it is chosen
  void show_rows(std::vector<NumberRows::Row> rows, QStringList remarks);
  /// Other rows than before: what was half typed is forgotten.
  void start_over();

 signals:
  void number_typed(int row, int column, double value);
  void row_typed(const std::vector<double>& row);
  void row_removed(int row);
  /// -1: none
  void row_chosen(int row);

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;
  void changeEvent(QEvent* event) override;

 private:
  void build_table(const Words& words);
  void connect_model();
  QPushButton* button(const QString& text, const QString& name, const QString& tip,
                      void (RowsForm::*act)());
  int chosen_row() const;
  void add_row();
  void remove_row();
  void tell();
  void tell_refusal(const QString& why);
  QString message() const;
  void fit_height();

  Words words_;
  QStringList remarks_;
  NumberRows* model_;
  QTableView* table_;
  QLabel* message_;
  QPushButton* add_;
  QPushButton* remove_;
};

}  // namespace drapewright::desktop
