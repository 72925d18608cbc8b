// Judges PDF files against PDF/UA-1 with the veraPDF engine inside the jar on the class path.
// The jar comes without the XML binding that veraPDF's own profile reader wants, so the
// profile is read here, element by element. Exit code: 0 all pass, 1 one fails, 2 wrong use.

import java.io.File;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.Date;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeMap;
import java.util.logging.Level;
import java.util.logging.Logger;
import javax.xml.parsers.DocumentBuilderFactory;
import org.verapdf.gf.foundry.VeraGreenfieldFoundryProvider;
import org.verapdf.pdfa.Foundries;
import org.verapdf.pdfa.PDFAParser;
import org.verapdf.pdfa.flavours.PDFAFlavour;
import org.verapdf.pdfa.results.TestAssertion;
import org.verapdf.pdfa.results.ValidationResult;
import org.verapdf.pdfa.validation.profiles.ErrorArgument;
import org.verapdf.pdfa.validation.profiles.ErrorArgumentImpl;
import org.verapdf.pdfa.validation.profiles.Profiles;
import org.verapdf.pdfa.validation.profiles.Rule;
import org.verapdf.pdfa.validation.profiles.RuleId;
import org.verapdf.pdfa.validation.profiles.ValidationProfile;
import org.verapdf.pdfa.validation.profiles.Variable;
import org.w3c.dom.Element;
import org.w3c.dom.Node;

public class Accessible {
  private static final String PROFILE = "org/verapdf/pdfa/validation/PDFUA-1.xml";

  public static void main(String[] files) throws Exception {
    if (files.length == 0) {
      System.err.println("usage: Accessible FILE.pdf...");
      System.exit(2);
    }
    Logger.getLogger("").setLevel(Level.OFF);
    VeraGreenfieldFoundryProvider.initialise();
    ValidationProfile profile = profile();
    boolean allPass = true;
    for (String file : files) {
      allPass &= judge(new File(file), profile);
    }
    System.exit(allPass ? 0 : 1);
  }

  private static boolean judge(File file, ValidationProfile profile) {
    PDFAFlavour flavour = profile.getPDFAFlavour();
    try (PDFAParser parser = Foundries.defaultInstance().createParser(file, flavour);
        var validator = Foundries.defaultInstance().createValidator(profile, false)) {
      ValidationResult result = validator.validate(parser);
      String verdict = result.isCompliant() ? "pass" : "FAIL";
      System.out.println(verdict + "  " + file.getName() + "  " + result.getTotalAssertions() + " assertions");
      TreeMap<String, Integer> failed = new TreeMap<>();
      for (TestAssertion one : result.getTestAssertions()) {
        if (one.getStatus() == TestAssertion.Status.FAILED) {
          RuleId rule = one.getRuleId();
          failed.merge("clause " + rule.getClause() + " test " + rule.getTestNumber() + ": " + one.getMessage(), 1, Integer::sum);
        }
      }
      failed.forEach((what, times) -> System.out.println("      " + what + "  (" + times + " times)"));
      return result.isCompliant();
    } catch (Exception | Error problem) {
      System.out.println("FAIL  " + file.getName() + "  could not be read: " + problem);
      return false;
    }
  }

  private static ValidationProfile profile() throws Exception {
    DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
    factory.setNamespaceAware(true);
    Element root;
    try (InputStream xml = PDFAFlavour.class.getClassLoader().getResourceAsStream(PROFILE)) {
      root = factory.newDocumentBuilder().parse(xml).getDocumentElement();
    }
    PDFAFlavour flavour = PDFAFlavour.valueOf(root.getAttribute("flavour"));
    Set<Rule> rules = new LinkedHashSet<>();
    for (Element element : below(below(root, "rules").get(0), "rule")) {
      rules.add(rule(element));
    }
    Set<Variable> variables = new LinkedHashSet<>();
    for (Element group : below(root, "variables")) {
      for (Element one : below(group, "variable")) {
        variables.add(Profiles.variableFromValues(
            one.getAttribute("name"), one.getAttribute("object"), text(one, "defaultValue"), text(one, "value")));
      }
    }
    Element details = below(root, "details").get(0);
    var said = Profiles.profileDetailsFromValues(
        text(details, "name"), text(details, "description"), details.getAttribute("creator"), new Date(0));
    return Profiles.profileFromValues(flavour, said, "", rules, variables);
  }

  private static Rule rule(Element element) {
    Element id = below(element, "id").get(0);
    RuleId ruleId = Profiles.ruleIdFromValues(
        PDFAFlavour.Specification.valueOf(id.getAttribute("specification")),
        id.getAttribute("clause"),
        Integer.parseInt(id.getAttribute("testNumber")));
    Element error = below(element, "error").get(0);
    List<ErrorArgument> arguments = new ArrayList<>();
    for (Element group : below(error, "arguments")) {
      for (Element one : below(group, "argument")) {
        String name = one.hasAttribute("name") ? one.getAttribute("name") : null;
        arguments.add(ErrorArgumentImpl.fromValues(one.getTextContent().trim(), name, null));
      }
    }
    Boolean deferred = element.hasAttribute("deferred") ? Boolean.valueOf(element.getAttribute("deferred")) : null;
    return Profiles.ruleFromValues(ruleId, element.getAttribute("object"), deferred, element.getAttribute("tags"),
        text(element, "description"), text(element, "test"),
        Profiles.errorFromValues(text(error, "message"), arguments), new ArrayList<>());
  }

  private static List<Element> below(Element parent, String name) {
    List<Element> found = new ArrayList<>();
    for (Node node = parent.getFirstChild(); node != null; node = node.getNextSibling()) {
      if (node instanceof Element element && element.getLocalName().equals(name)) {
        found.add(element);
      }
    }
    return found;
  }

  private static String text(Element parent, String name) {
    List<Element> found = below(parent, name);
    return found.isEmpty() ? "" : found.get(0).getTextContent().trim();
  }
}
