// Forecast's cells of the title block: the run, the part, and when it was reckoned.
import QtQuick
import Kneerail.Ui

Row {
    id: cells

    required property ForecastModel forecast
    property bool portrait: false
    property bool lined: false

    height: parent ? parent.height : implicitHeight

    TitleCell {
        tells: true
        visible: !cells.portrait && !cells.lined && text !== ""
        caption: cells.forecast.siteName
        text: cells.forecast.runName
    }

    TitleCell {
        tells: true
        visible: cells.forecast.partName !== ""
        caption: qsTr("Post %1").arg(cells.forecast.postLabel)
        text: cells.forecast.partName
    }

    TitleCell {
        tells: true
        visible: !cells.portrait
        caption: cells.forecast.stale ? qsTr("Reckoned before") : qsTr("Reckoned")
        text: cells.forecast.reckonedOn !== "" ? cells.forecast.reckonedOn : cells.forecast.busy ? qsTr("just now") : qsTr("not yet")
        lookAgain: cells.forecast.stale
    }
}
