namespace StabilityStudy.SignedPdf.Xmp;

/// <summary>
/// The statements by which a file says that it is PDF/A-3a (ISO 19005-3:2012, 6.6.4) and PDF/UA-1 (ISO 14289-1:2014, 5). PDF/A knows no properties of PDF/UA, so
/// that a description of them must stand in the file (ISO 19005-3:2012, 6.6.2.3 and Annex A).
/// </summary>
internal static class ArchiveClaim
{
    /// <summary>The descriptions, as elements of the RDF of a packet.</summary>
    public const string Descriptions = """
        <rdf:Description rdf:about=""
         xmlns:pdfaid="http://www.aiim.org/pdfa/ns/id/">
        <pdfaid:part>3</pdfaid:part>
        <pdfaid:conformance>A</pdfaid:conformance>
        </rdf:Description>
        <rdf:Description rdf:about=""
         xmlns:pdfuaid="http://www.aiim.org/pdfua/ns/id/">
        <pdfuaid:part>1</pdfuaid:part>
        </rdf:Description>
        <rdf:Description rdf:about=""
         xmlns:pdfaExtension="http://www.aiim.org/pdfa/ns/extension/"
         xmlns:pdfaSchema="http://www.aiim.org/pdfa/ns/schema#"
         xmlns:pdfaProperty="http://www.aiim.org/pdfa/ns/property#">
        <pdfaExtension:schemas>
        <rdf:Bag>
        <rdf:li rdf:parseType="Resource">
        <pdfaSchema:schema>PDF/UA identification schema</pdfaSchema:schema>
        <pdfaSchema:namespaceURI>http://www.aiim.org/pdfua/ns/id/</pdfaSchema:namespaceURI>
        <pdfaSchema:prefix>pdfuaid</pdfaSchema:prefix>
        <pdfaSchema:property>
        <rdf:Seq>
        <rdf:li rdf:parseType="Resource">
        <pdfaProperty:name>part</pdfaProperty:name>
        <pdfaProperty:valueType>Integer</pdfaProperty:valueType>
        <pdfaProperty:category>internal</pdfaProperty:category>
        <pdfaProperty:description>Part of ISO 14289 to which the file conforms</pdfaProperty:description>
        </rdf:li>
        </rdf:Seq>
        </pdfaSchema:property>
        </rdf:li>
        </rdf:Bag>
        </pdfaExtension:schemas>
        </rdf:Description>

        """;
}
