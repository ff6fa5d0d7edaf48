// The coating along the years; where nothing can be drawn, why not.
import QtQuick
import Kneerail.Ui

Item {
    id: sheet

    required property ForecastModel forecast

    InkText {
        id: heading

        x: Tokens.pageMargin
        y: Tokens.margin
        text: qsTr("Coating, µm")
        bold: true
        visible: sheet.forecast.drawn
    }

    InkText {
        anchors.right: parent.right
        anchors.rightMargin: Tokens.margin
        anchors.baseline: heading.baseline
        visible: sheet.forecast.stale
        text: qsTr("hollow: something was entered since, reckoning again")
        color: Tokens.ink2
        font.pixelSize: Tokens.smallText
    }

    TrendView {
        anchors.fill: parent
        anchors.topMargin: heading.y + heading.height + Tokens.smallGap
        anchors.leftMargin: Tokens.margin
        anchors.rightMargin: Tokens.margin
        model: sheet.forecast
        tokens: Tokens
        visible: sheet.forecast.drawn
        Accessible.role: Accessible.Chart
        Accessible.name: qsTr("Coating of post %1, %2, along the years").arg(sheet.forecast.postLabel).arg(sheet.forecast.partName)
        Accessible.description: sheet.forecast.headline
    }

    InkText {
        anchors.centerIn: parent
        width: parent.width - Tokens.pageMargin * 4
        visible: !sheet.forecast.drawn
        text: sheet.forecast.message
        font.pixelSize: Tokens.keyText
        horizontalAlignment: Text.AlignHCenter
        wrapMode: Text.Wrap
        Accessible.role: Accessible.StaticText
        Accessible.name: text
    }
}
