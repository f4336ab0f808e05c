#include "app/desktop/panels/material_rows.h"

#include <QStringList>
#include <algorithm>

#include "app/wording/spoken.h"
#include "core/base/numbers.h"
#include "core/supplies/stock_item.h"

namespace drapewright::desktop {
namespace {

QString quoted(QString cell) {
  static const QString special = "\",\r\n";
  const bool needs_quotes =
      std::any_of(cell.begin(), cell.end(), [](QChar c) { return special.contains(c); });
  return needs_quotes ? '"' + cell.replace('"', "\"\"") + '"' : cell;
}

QString on_one_line(QString cell) { return cell.replace('\t', ' ').replace('\n', ' '); }

template <class Cell>
QString table(const std::vector<MaterialRow>& rows, const QString& between, const QString& end,
              const Cell& cell) {
  QString text;
  const auto add = [&](const MaterialRow& row) {
    text += QStringList{cell(row.item), cell(row.per_application), cell(row.per_course),
                        cell(row.basis)}
                .join(between) +
            end;
  };
  add(material_titles());
  for (const auto& row : rows) add(row);
  return text;
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
  return table(rows, "\t", "\n", on_one_line);
}

QByteArray as_csv(const std::vector<MaterialRow>& rows) {
  return table(rows, ",", "\r\n", quoted).toUtf8();
}

}  // namespace drapewright::desktop
