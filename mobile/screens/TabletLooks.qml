// How this screen looks, and how large its glass is.
import QtQuick
import Kneerail.Ui

Column {
    id: looks

    required property ThisTablet tablet
    property bool measures: false

    signal done

    spacing: Tokens.margin

    LookKeys {
        width: parent.width
        visible: !looks.measures
    }

    NamedKeys {
        width: parent.width
        visible: !looks.measures
        caption: qsTr("Language")
        named: "language"
        names: looks.tablet.languages
        now: looks.tablet.language
        columns: 3
        onChosen: place => looks.tablet.chooseLanguage(place)
    }

    InkText {
        width: parent.width
        visible: !looks.measures
        text: Tokens.sizeMeasured ? qsTr("The glass was measured with a card: drawings are to scale on it.") : qsTr("Nobody has measured this glass: scales of drawings are about what they say.")
        wrapMode: Text.Wrap
    }

    OctagonKey {
        objectName: "measureGlass"
        width: parent.width
        visible: !looks.measures
        text: qsTr("Measure the glass with a card")
        onClicked: looks.measures = true
    }

    CardOnGlass {
        width: parent.width
        visible: looks.measures
        onDone: looks.measures = false
    }

    OctagonKey {
        objectName: "leaveTablet"
        width: parent.width
        visible: !looks.measures
        look: KeyFace.Act
        text: qsTr("Back")
        onClicked: looks.done()
    }
}
