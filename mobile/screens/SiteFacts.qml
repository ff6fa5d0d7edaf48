// What the register has of a site, in lines: a run that is touched is walked.
pragma ComponentBehavior: Bound

import QtQuick
import Kneerail.Ui

Flickable {
    id: facts

    required property SiteSentence site

    contentHeight: lines.height + Tokens.margin * 2
    boundsBehavior: Flickable.StopAtBounds
    clip: true

    Column {
        id: lines

        x: Tokens.margin
        y: Tokens.margin
        width: facts.width - Tokens.margin * 2
        spacing: Tokens.inset

        InkText {
            width: parent.width
            visible: facts.site.isNew
            text: qsTr("Nothing is in the register until you keep this site. Its runs are laid out after that.")
            color: Tokens.ink2
            wrapMode: Text.Wrap
        }

        Repeater {
            model: facts.site.zoneLines

            InkText {
                required property string modelData

                width: lines.width
                text: modelData
                wrapMode: Text.Wrap
                Accessible.role: Accessible.StaticText
                Accessible.name: text
            }
        }

        Repeater {
            model: facts.site.runNames

            Row {
                id: run

                required property int index
                required property string modelData

                spacing: Tokens.gap

                OctagonKey {
                    objectName: "sheetRun" + run.index
                    width: lines.width - (alter.visible ? alter.width + run.spacing : 0)
                    height: Math.max(Tokens.touchTarget, implicitHeight)
                    text: run.modelData
                    secondLine: facts.site.runLines[run.index] ?? ""
                    spoken: qsTr("Walk %1: %2").arg(run.modelData).arg(secondLine)
                    textSize: Tokens.labelText
                    secondTextSize: Tokens.smallText
                    onClicked: facts.site.walkRun(run.index)
                }

                OctagonKey {
                    id: alter

                    objectName: "changeRun" + run.index
                    visible: facts.site.writable
                    height: Tokens.touchTarget
                    text: qsTr("Change")
                    spoken: qsTr("Change %1").arg(run.modelData)
                    textSize: Tokens.labelText
                    onClicked: facts.site.changeRun(run.index)
                }
            }
        }

        InkText {
            width: parent.width
            visible: !facts.site.isNew
            text: qsTr("Told when something cannot wait")
            bold: true
            font.pixelSize: Tokens.smallText
        }

        Repeater {
            model: facts.site.peopleLines

            InkText {
                required property string modelData

                width: lines.width
                text: modelData
                wrapMode: Text.Wrap
                Accessible.role: Accessible.StaticText
                Accessible.name: text
            }
        }

        InkText {
            width: parent.width
            visible: !facts.site.isNew
            text: facts.site.ruleLine
            color: Tokens.ink2
            wrapMode: Text.Wrap
            Accessible.role: Accessible.StaticText
            Accessible.name: text
        }
    }
}
