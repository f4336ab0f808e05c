#include "app/desktop/panels/material_rows.h"

#include <QStringList>

#include "app/wording/spoken.h"
#include "core/base/numbers.h"
#include "core/casefile/csv.h"
#include "core/supplies/stock_item.h"

namespace drapewright::desktop {
namespace {

QString on_one_line(QString cell) { return cell.replace('\t', ' ').replace('\n', ' '); }

/// Titles, then the lines.
std::vector<QStringList> cells_of(const std::vector<MaterialRow>& rows) {
  const auto cells = [](const MaterialRow& row) {
    return QStringList{row.item, row.per_application, row.per_course, row.basis};
  };
  std::vector<QStringList> all{cells(material_titles())};
  for (const auto& row : rows) all.push_back(cells(row));
  return all;
}

}  // namespace

MaterialRow material_titles() {
  return {spoken("Item"), spoken("Each time"), spoken("Course"), spoken("How it is worked out")};
}

std::vector<MaterialRow> material_rows(const dressing::Plan& plan) {
  std::vector<MaterialRow> rows;
  for (const auto& line : plan.consumables) {
    rows.push_back({line.estimate ? spoken("{1} (estimate)", {supplies::shown_name(line.item)})
                                  : QString::fromStdString(supplies::shown_name(line.item)),
                    QString::fromStdString(format_short(line.per_application, 2)),
                    QString::fromStdString(format_short(line.per_course, 2)),
                    QString::fromStdString(line.basis)});
  }
  return rows;
}

QString as_tab_separated(const std::vector<MaterialRow>& rows) {
  QString text;
  for (QStringList line : cells_of(rows)) {
    for (QString& cell : line) cell = on_one_line(cell);
    text += line.join('\t') + '\n';
  }
  return text;
}

QByteArray as_csv(const std::vector<MaterialRow>& rows) {
  std::string text;
  for (const QStringList& line : cells_of(rows)) {
    std::vector<std::string> cells;
    for (const QString& cell : line) cells.push_back(cell.toStdString());
    text += casefile::csv_line(cells);
  }
  return QByteArray::fromStdString(text);
}

}  // namespace drapewright::desktop
