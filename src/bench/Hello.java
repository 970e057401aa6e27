/** What a bare Java takes to start. */
public class Hello {
  public static void main(String[] arguments) {
    System.out.println("Hello");
  }
}
